import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runProgram, temporaryFolder } from './run-program.ts';

const recordings = join(import.meta.dirname, '..', '..', 'recordings');
const north = [1, 2, 3, 4, 5].map((run) => join(recordings, `wb-212-north-run-${run}.dwell.txt`));
const traces = join(import.meta.dirname, '..', 'reference', 'traces');

describe('replay --json', () => {
  const { code, out, err } = runProgram(['replay', ...north, '--json']);
  const result = JSON.parse(out);

  it('ends with 0 and says nothing on standard error', () => {
    expect([code, err]).toEqual([0, '']);
  });

  it('gives each run with its documented keys', () => {
    expect(result.runs).toHaveLength(5);
    const keys = [
      'source',
      'pressClosedS',
      'crossingS',
      'soakTimeS',
      'soakTimeStandardUncertaintyS',
      'startC',
      'peakC',
      'verdict',
      'reasons',
    ];
    for (const run of result.runs) for (const key of keys) expect(run).toHaveProperty(key);
    expect(result.runs[0].source).toBe(north[0]);
  });

  it('soak time is crossing less press closed', () => {
    for (const run of result.runs) expect(run.soakTimeS).toBeCloseTo(run.crossingS - run.pressClosedS, 9);
  });

  it('gives trial and dwell with their documented keys; the mean rule is the default', () => {
    for (const key of [
      'runs',
      'meanSoakS',
      'sdSoakS',
      'minSoakS',
      'maxSoakS',
      'meanCi95S',
      'nextRunUpper95S',
    ])
      expect(result.trial).toHaveProperty(key);
    for (const key of ['rule', 'soakS', 'holdS', 'marginS', 'totalS'])
      expect(result.dwell).toHaveProperty(key);
    expect(result.dwell.rule).toBe('mean');
  });

  // Trade check value, common practice, no source: 53 to 54 s to 350 °F and 120 s hold make about 174 s.
  it('53 to 54 s of soak and 120 s of hold make a dwell of 174 s by the mean rule', () => {
    expect(result.trial.meanSoakS).toBeGreaterThan(53);
    expect(result.trial.meanSoakS).toBeLessThan(54);
    expect(result.dwell.totalS).toBe(174);
  });

  it('a stricter rule gives no shorter dwell', () => {
    const strict = JSON.parse(runProgram(['replay', ...north, '--rule', 'next-run', '--json']).out);
    expect(strict.dwell.totalS).toBeGreaterThanOrEqual(result.dwell.totalS);
    expect(strict.dwell.soakS).toBeCloseTo(strict.trial.nextRunUpper95S, 9);
  });
});

describe('replay in words', () => {
  it('gives both dwell lines, °F first', () => {
    const { out } = runProgram(['replay', ...north]);
    expect(out).toMatch(/common mean rule: 174 s; about half of all cycles hold for less than 120 s/);
    expect(out).toMatch(/full hold in the next run \(95 %\): \d+ s/);
    expect(out).toMatch(/Target 350 °F \(176\.7 °C\)/);
    expect(out).toMatch(/SIMULATED/);
  });
});

describe('exit codes and errors', () => {
  it('1 when no run is usable, and the result is still printed', () => {
    const { code, out } = runProgram([
      'replay',
      join(recordings, 'failure-probe-on-platen.dwell.txt'),
      '--json',
    ]);
    expect(code).toBe(1);
    expect(JSON.parse(out)).toMatchObject({
      runs: [{ verdict: 'unusable' }],
      trial: { runs: 0, meanSoakS: null },
      dwell: { totalS: null },
    });
  });

  it.each([
    ['a missing file', ['replay', 'no-such-file.txt'], /no file/],
    ['no file at all', ['replay'], /no file given/],
    ['an unknown option', ['replay', 'x', '--tarrget', '350F'], /--target/],
    ['an unknown command', ['relpay'], /replay/],
    ['a target without unit', ['replay', ...north, '--target', '350'], /unit/],
    ['a folder', ['replay', recordings], /folder/],
    [
      'a logger file whose bond line is unknown',
      ['replay', join(traces, 'heater-step.csv')],
      /--temperature-column T1/,
    ],
  ])('2 for %s, in words on standard error, without a stack', (_, args, words) => {
    const { code, out, err } = runProgram(args);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(words);
    expect(err).not.toMatch(/^\s+at /m);
  });

  it('replays other loggers’ files once the options are given', () => {
    // Read in the file itself: T1 stands at 49.58 °C until 296.35 s, at 49.9 °C until 304.33 s, then at 50.22 °C.
    const { code, out } = runProgram([
      'replay',
      join(traces, 'heater-step.csv'),
      '--temperature-column',
      'T1',
      '--unit',
      'C',
      '--target',
      '50C',
      '--closed-at',
      '0s',
      '--json',
    ]);
    expect(code).toBe(0);
    const [run] = JSON.parse(out).runs;
    expect(run.crossingS).toBeGreaterThan(290);
    expect(run.crossingS).toBeLessThan(312);
  });

  it('the terminal never sees escape sequences of a file', () => {
    const { err } = runProgram(['replay', 'no\u001b[31mfile']);
    expect(err).not.toContain('\u001b');
  });
});

describe('what does not belong together', () => {
  const south = join(recordings, 'wb-150-south-run-1.dwell.txt');

  it('the same recording twice counts once', () => {
    const { trial, runs } = JSON.parse(
      runProgram(['replay', north[0] as string, north[0] as string, '--json']).out,
    );
    expect([runs.length, trial.runs]).toEqual([2, 1]);
    expect(runs[1]).toMatchObject({ counted: false, decision: 'set-aside' });
  });

  it('two assemblies on two presses are not averaged: a result for each, none in common, unless asked', () => {
    const files = [...north, south];
    const { trial, dwell, runs, groups } = JSON.parse(runProgram(['replay', ...files, '--json']).out);
    expect([runs.length, trial.runs, trial.meanSoakS, dwell.totalS]).toEqual([6, 0, null, null]);
    expect(groups.map((group: { trial: { runs: number } }) => group.trial.runs)).toEqual([5, 1]);
    expect(JSON.parse(runProgram(['replay', ...files, '--together', '--json']).out).trial.runs).toBe(6);
  });

  it('standard input is read as a file would be', () => {
    const text = readFileSync(north[0] as string, 'utf8');
    const { runs } = JSON.parse(runProgram(['replay', '-', '--json'], {}, text).out);
    const fromFile = JSON.parse(runProgram(['replay', north[0] as string, '--json']).out).runs;
    expect({ ...runs[0], source: '' }).toEqual({ ...fromFile[0], source: '' });
  });

  it('a closing outside the readings is refused: exit 2', () => {
    const { code, err } = runProgram(['replay', north[0] as string, '--closed-at', '999s']);
    expect([code, err.includes('lies outside its readings')]).toEqual([2, true]);
  });

  it('a file whose clock runs backwards before the crossing is suspect', () => {
    // Closed form: 24 °C, platens 232 °C, time constant 40 s; the clock goes back from 40 to 30 s once.
    const row = (timeS: number, heatedS: number) =>
      `${timeS},${(232 - 208 * Math.exp(-heatedS / 40)).toFixed(2)}`;
    const rows = ['time_s,temp_C', ...Array.from({ length: 100 }, (_, i) => row(i < 40 ? i : i - 10, i))];
    const { code, out } = runProgram(
      ['replay', '-', '--closed-at', '0s', '--target', '176C', '--json'],
      {},
      `${rows.join('\n')}\n`,
    );
    expect(code).toBe(1);
    expect(JSON.parse(out).runs[0]).toMatchObject({ verdict: 'suspect' });
    expect(JSON.parse(out).runs[0].reasonCodes).toContain('clock-backwards');
  });
});

describe('the built program reads signs beyond ASCII as the tests of the sources do', () => {
  const folder = temporaryFolder();
  // First order with 30 s about a delay of 3 s, from 24 °C towards 203.5 °C: closed form of the crossing of 350 °F is known.
  const rows = Array.from({ length: 2400 }, (_, index) => {
    const timeS = index / 10;
    return { timeS, temperatureC: 24 + 179.5 * (1 - Math.exp(-Math.max(0, timeS - 25) / 30)) };
  });
  const crossingS = 25 - 30 * Math.log(1 - (176.667 - 24) / 179.5);
  it.each([
    ['time_s,Temp (°C)', 1],
    ['Time (µs),Temp [℃]', 1e6],
  ])('"%s" names its units', (heading, timeFactor) => {
    const file = join(folder, `${timeFactor}.csv`);
    const lines = rows.map((row) => `${row.timeS * timeFactor},${row.temperatureC.toFixed(3)}`);
    writeFileSync(file, [heading, ...lines, ''].join('\n'));
    const { out, err } = runProgram(['replay', file, '--target', '350F', '--closed-at', '22s', '--json']);
    expect(err).not.toMatch(/unit/);
    expect(JSON.parse(out).runs[0].soakTimeS).toBeCloseTo(crossingS - 22, 1);
  });
});
