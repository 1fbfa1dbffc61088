import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runProgram } from './run-program.ts';

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
