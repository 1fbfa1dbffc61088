import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../src/adapters/sqlite/open-store.ts';
import { parseRecording } from '../../src/core/recording/parse-recording.ts';
import type { RecordingEntry, RecordingHead } from '../../src/core/recording/RecordingEntry.ts';
import { formatSample } from '../../src/core/wire/protocol/index.ts';
import { runProgram, temporaryFolder } from './run-program.ts';

const RECORDINGS = join(import.meta.dirname, '..', '..', 'recordings');
const file = (name: string) => join(RECORDINGS, `${name}.dwell.txt`);
const NAMES = ['north', 'south'].flatMap((press) => [1, 2, 3].map((day) => `warm-up-${press}-${day}`));

// From 22 °C at 0.2 °C/s to 232 °C, off at 3000 s and down by e^(−t/1500 s), on again at 7500 s: closed form.
const OFF_S = 3000;
const ON_AGAIN_S = 7500;
/** Off for 13 min only: still at 145 °C. */
const WARM_AGAIN_S = 3800;
const SET_C = (450 - 32) / 1.8;
const cooledC = (timeS: number) => 22 + (SET_C - 22) * Math.exp(-(timeS - OFF_S) / 1500);
const twiceC = (timeS: number, onAgainS: number): number =>
  timeS <= OFF_S
    ? Math.min(SET_C, 22 + 0.2 * Math.max(0, timeS - 60))
    : timeS <= onAgainS
      ? cooledC(timeS)
      : Math.min(SET_C, cooledC(onAgainS) + 0.2 * (timeS - onAgainS));

const TWICE: RecordingHead = {
  recordingId: '',
  madeAt: '2026-03-20T06:00:00+01:00',
  program: 'test',
  roles: ['upper-platen', 'lower-platen'],
  simulated: true,
  pressName: 'North',
  platenSetPointC: { upper: SET_C, lower: SET_C },
  further: { 'made-for': 'warm-up' },
};

function twiceEntries(onAgainS: number): readonly RecordingEntry[] {
  return Array.from({ length: onAgainS + 3500 }, (_, timeS): RecordingEntry => {
    const value = {
      kind: 'temperature' as const,
      temperatureC: Math.round(twiceC(timeS, onAgainS) * 100) / 100,
    };
    const text = formatSample({
      sequence: timeS,
      deviceTimeUs: (timeS * 1e6) % 2 ** 32,
      channels: [value, value],
    });
    return { kind: 'line', arrivedUs: timeS * 1e6 + 50_000, text, wholeness: 'whole' };
  });
}

const path = join(temporaryFolder(), 'store.db');
const store = openStore({ path });
for (const name of [...NAMES, 'survey-south-lower']) {
  const { head, entries } = parseRecording(readFileSync(file(name), 'utf8'));
  const writer = store.startRecording(head);
  for (const entry of entries) writer.append(entry);
  writer.close();
}
for (const [recordingId, onAgainS] of [
  ['twice-heated', ON_AGAIN_S],
  ['warm-again', WARM_AGAIN_S],
] as const) {
  const writer = store.startRecording({ ...TWICE, recordingId });
  for (const entry of twiceEntries(onAgainS)) writer.append(entry);
  writer.close();
}
store.close();
const run = (...args: readonly string[]) => runProgram([...args, '--store', path]);
const json = (...args: readonly string[]) => JSON.parse(run(...args, '--json').out);
const id = (name: string) => `simulated-${name}`;

describe('recordings of the store by their id', () => {
  it('warm-up: the same figures to the last digit as from the file', () => {
    const [stored] = json('warm-up', id('warm-up-north-1')).warmUps;
    const [filed] = JSON.parse(runProgram(['warm-up', file('warm-up-north-1'), '--json']).out).warmUps;
    expect({ ...stored, source: '' }).toEqual({ ...filed, source: '' });
  });

  it('the only id that begins so is enough; several are refused with what to do', () => {
    expect(json('warm-up', 'twice').warmUps[0].source).toBe('twice-heated');
    const { code, err } = run('warm-up', 'simulated-warm-up-north');
    expect(code).toBe(2);
    expect(err).toContain('3 recordings of the store begin so');
  });

  it('no such file and no such recording: exit 2, both are said', () => {
    const { code, err } = run('warm-up', 'nowhere');
    expect(code).toBe(2);
    expect(err).toMatch(/no file of this name, and no recording of the store/);
    expect(err).toContain('dwellwright recordings');
  });

  it('survey: spread as from the file', () => {
    expect(json('survey', id('survey-south-lower')).spreadC).toBe(
      JSON.parse(runProgram(['survey', file('survey-south-lower'), '--json']).out).spreadC,
    );
  });

  it('compare: ids and files in one', () => {
    const compared = json(
      'compare',
      '--first',
      id('warm-up-north-1'),
      file('warm-up-north-2'),
      '--second',
      id('warm-up-south-1'),
    );
    expect(compared.sources.first.map(({ source }: { source: string }) => source)).toEqual([
      id('warm-up-north-1'),
      file('warm-up-north-2'),
    ]);
  });

  it('chart and report take them too; the report names the hash of the recording’s own bytes', () => {
    const folder = temporaryFolder();
    const chart = run(
      'chart',
      id('warm-up-north-1'),
      '--view',
      'warm-up',
      '--out',
      join(folder, 'chart.svg'),
    );
    expect(chart.err).toBe('');
    const report = run(
      'report',
      '--first',
      id('warm-up-north-1'),
      '--second',
      id('warm-up-south-1'),
      '--out',
      join(folder, 'r.html'),
    );
    expect(report.err).toBe('');
    const filed = runProgram([
      'report',
      '--first',
      file('warm-up-north-1'),
      '--second',
      file('warm-up-south-1'),
      '--out',
      join(folder, 'f.html'),
    ]);
    expect(filed.err).toBe('');
    const hashes = (name: string) =>
      [...readFileSync(join(folder, name), 'utf8').matchAll(/\b[0-9a-f]{64}\b/g)].map(([hash]) => hash);
    expect(hashes('r.html').length).toBeGreaterThanOrEqual(2);
    expect(new Set(hashes('r.html'))).toEqual(new Set(hashes('f.html')));
  });
});

describe('a press of the store', () => {
  it('two presses: every warm-up of each, as by naming the files', () => {
    const chosen = json(
      'compare',
      '--first-press',
      'North',
      '--first-dates',
      '2026-03-16/2026-03-18',
      '--second-press',
      'South',
    );
    const files = (press: string) => [1, 2, 3].map((day) => file(`warm-up-${press}-${day}`));
    const named = JSON.parse(
      runProgram(['compare', '--first', ...files('north'), '--second', ...files('south'), '--json']).out,
    );
    expect(chosen.figures ?? chosen.platens).toEqual(named.figures ?? named.platens);
    expect(chosen.sources.second).toHaveLength(3);
  });

  it('one press over time: first and second by days, the survey and other presses left alone', () => {
    const over = json(
      'compare',
      '--first-press',
      'North',
      '--first-dates',
      '/2026-03-16',
      '--second-dates',
      '2026-03-17/2026-03-18',
    );
    const sources = (side: 'first' | 'second') =>
      over.sources[side].map(({ source }: { source: string }) => source);
    expect(sources('first')).toEqual([id('warm-up-north-1')]);
    expect(sources('second')).toEqual([id('warm-up-north-2'), id('warm-up-north-3')]);
    expect([over.first.name, over.second.name]).toEqual(['North /2026-03-16', 'North 2026-03-17/2026-03-18']);
  });

  it.each([
    [
      'a press without recordings',
      ['--first-press', 'East', '--second-press', 'South'],
      /no warm-up of East/,
    ],
    [
      'a day that is none',
      ['--first-press', 'North', '--first-dates', '2026-02-30', '--second-press', 'South'],
      /expected days/,
    ],
    [
      'days the wrong way round',
      ['--first-press', 'North', '--first-dates', '2026-04-01/2026-03-01', '--second-press', 'South'],
      /comes after/,
    ],
    [
      'the same recording on both sides',
      ['--first', id('warm-up-north-1'), '--second', file('warm-up-north-1')],
      /stands on both sides/,
    ],
    ['one side only', ['--first-press', 'North'], /two sides/],
    [
      'a side named twice',
      ['--first', 'x', '--first-press', 'North', '--second-press', 'South'],
      /came both/,
    ],
  ])('%s: exit 2, with what to do', (_, args, message) => {
    const { code, err } = run('compare', ...args);
    expect(code).toBe(2);
    expect(err).toMatch(message);
    expect(err).toContain('what to do:');
  });
});

describe('a recording of two heatings', () => {
  it('warm-up tells both, each with its own start and READY by the closed form', () => {
    const { warmUps } = json('warm-up', 'twice-heated');
    expect(warmUps).toHaveLength(2);
    const [first, second] = warmUps;
    expect(first).toMatchObject({ heating: 1, heatings: 2 });
    expect(Math.abs(first.coolsFromS - OFF_S)).toBeLessThan(15);
    expect(first.platens[0].startC).toBeCloseTo(22, 0);
    expect(second.platens[0].startC).toBeCloseTo(cooledC(ON_AGAIN_S), 0);
    // 0.2 °C/s to the lower edge of the band, then 300 s; times count from power-on, here from the rise.
    const readyS = (startC: number) => (SET_C - 5 / 1.8 - startC) / 0.2 + 300;
    expect(Math.abs(first.readyAtS - readyS(22))).toBeLessThan(15);
    expect(Math.abs(second.readyAtS - readyS(cooledC(ON_AGAIN_S)))).toBeLessThan(15);
    const { out } = run('warm-up', 'twice-heated');
    expect(out).toContain('twice-heated, heating 1 of 2: warm-up of North.');
    expect(out).toMatch(/The platens cool from 50 min \d+ s on; that is left out\./);
    expect(out).toContain('twice-heated, heating 2 of 2');
  });

  it('--heating 2 is the second alone; --heating 3 is refused', () => {
    const { warmUps } = json('warm-up', 'twice-heated', '--heating', '2');
    expect(warmUps.map(({ heating }: { heating: number }) => heating)).toEqual([2]);
    const { code, err } = run('warm-up', 'twice-heated', '--heating', '3');
    expect(code).toBe(2);
    expect(err).toContain('holds 2 heatings, came 3');
  });

  it('--powered-at without --heating is refused: it is of one', () => {
    expect(run('warm-up', 'twice-heated', '--powered-at', '60s').err).toContain('Say which: --heating 1');
  });

  it('compare counts both where both began cold', () => {
    const { sources, leftOut } = json(
      'compare',
      '--first',
      'twice-heated',
      '--second',
      id('warm-up-south-1'),
    );
    // It had cooled to 32.5 °C by then: cold.
    expect(cooledC(ON_AGAIN_S)).toBeCloseTo(32.5, 1);
    expect(sources.first).toHaveLength(2);
    expect(leftOut).toEqual([]);
  });

  it('one that began warm is left out, and said; --heating 2 takes it', () => {
    expect(cooledC(WARM_AGAIN_S)).toBeGreaterThan(140);
    const compared = (...more: readonly string[]) =>
      json('compare', '--first', 'warm-again', '--second', id('warm-up-south-1'), ...more);
    const { sources, leftOut } = compared();
    expect(sources.first.map(({ heating }: { heating: number }) => heating)).toEqual([1]);
    expect(leftOut).toEqual(['warm-again, heating 2 of 2: began warm, left out. --heating 2 compares it.']);
  });
});

describe('chart and report of a press over time', () => {
  it('by press and days; what was left out stands in the report', () => {
    const folder = temporaryFolder();
    const sides = [
      '--first-press',
      'North',
      '--first-dates',
      '/2026-03-16',
      '--second-dates',
      '2026-03-17/2026-03-18',
    ];
    const chart = run('chart', ...sides, '--out', join(folder, 'chart.svg'));
    expect(chart.err).toBe('');
    expect(readFileSync(join(folder, 'chart.svg'), 'utf8')).toContain('North /2026-03-16');
    const report = run('report', ...sides, '--out', join(folder, 'over-time.html'));
    expect(report.err).toBe('');
    expect(readFileSync(join(folder, 'over-time.html'), 'utf8')).toContain('North 2026-03-17/2026-03-18');
  });
});
