import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { verifyStore } from '../../src/adapters/sqlite/verify-store.ts';
import { DwellwrightError } from '../../src/core/DwellwrightError.ts';
import type { ImportOptions } from '../../src/program/exchange/ImportOptions.ts';
import { analyseSource } from '../../src/program/sources/analyse-source.ts';
import { openSource } from '../../src/program/sources/open-source.ts';
import { rowCounts } from '../adapters/sqlite/filled-store.ts';
import {
  brought,
  CLOSED_AT_S,
  type LogForm,
  logText,
  OF_A_TRIAL,
  PLAIN_LOG,
  replayedFromStore,
  SOAK_S,
  withStoreAt,
  writtenFile,
} from './exchange-helpers.ts';
import { temporaryFolder } from './run-program.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const RECORDINGS = readdirSync(join(ROOT, 'recordings'))
  .filter((name) => name.endsWith('.dwell.txt'))
  .map((name) => join(ROOT, 'recordings', name));
const TRACES = join(ROOT, 'tests', 'reference', 'traces');

const place = () => {
  const folder = temporaryFolder();
  return { folder, store: join(folder, 'store.db') };
};
const refused = (code: string) => expect.objectContaining({ code, remedy: expect.stringMatching(/\w/) });

const FORMS: readonly (readonly [string, LogForm, Partial<ImportOptions>])[] = [
  ['commas, seconds, °C', PLAIN_LOG, {}],
  [
    'semicolons, decimal comma, CR LF',
    {
      heading: 'Zeit [s];Klebefuge [°C]',
      row: (timeS, c) => `${timeS.toFixed(1)};${c.toFixed(2)}`.replaceAll('.', ','),
      lineEnd: '\r\n',
    },
    { temperatureColumn: ['2'] },
  ],
  [
    'clock stamps with a date past midnight, °F',
    {
      heading: 'Date,Clock,Bond line F',
      stepS: 1,
      row: (timeS, c) => {
        const at = new Date(Date.parse('2026-03-02T23:58:30Z') + timeS * 1000).toISOString();
        return `${at.slice(0, 10)},${at.slice(11, 19)},${(c * 1.8 + 32).toFixed(1)}`;
      },
    },
    { unit: 'F' },
  ],
  [
    'four rows under one clock second (shared times)',
    {
      heading: 'Time,T1 (C)',
      stepS: 0.25,
      row: (timeS, c) => `${new Date(timeS * 1000).toISOString().slice(11, 19)},${c.toFixed(2)}`,
    },
    {},
  ],
  [
    'no times, rows 0.5 s apart, kelvin',
    { heading: 'T1', row: (_timeS, c) => (c + 273.15).toFixed(2) },
    { unit: 'K', interval: '0.5s' },
  ],
  [
    'milliseconds, platens beside, a gap, a preamble',
    {
      heading: 'Logger 7\nLot 9\nms,Bond line C,Upper platen C',
      row: (timeS, c, at) => (at > 20 && at < 30 ? '' : `${timeS * 1000},${c.toFixed(2)},232.2`),
    },
    { timeUnit: 'ms', timeColumn: '1', temperatureColumn: ['2', '3'] },
  ],
];

describe('a logger’s file brought in', () => {
  it.each(FORMS)(
    '%s: replays from the store as from the file, to the last digit',
    async (_title, form, how) => {
      const { folder, store } = place();
      const file = writtenFile(folder, 'log.csv', logText(form));
      const rules = {
        target: '350F',
        hold: '90s',
        closedAt: `${CLOSED_AT_S}s`,
        platens: '450F',
        ambient: '75F',
      };
      const outcome = await brought(store, [file], { ...OF_A_TRIAL, ...how, ...rules });
      const fromFile = analyseSource(await openSource(file, how), rules);
      expect(replayedFromStore(store)).toEqual(fromFile.results);
      const [kept] = outcome.files;
      expect(kept).toMatchObject({ results: fromFile.results });
      expect(
        withStoreAt(store, (open) =>
          open.trialRuns(open.trials()[0]?.trialId ?? '').map((run) => run.result),
        ),
      ).toEqual(fromFile.results);
      // Closed form of the rise; a clock in whole seconds may be wrong by half of one at either end.
      const [run] = fromFile.results;
      expect(Math.abs((run?.soakTimeS ?? Number.NaN) - SOAK_S)).toBeLessThan(0.5);
      expect(verifyStore(store)).toMatchObject({ recordings: 1, sound: 1, problems: [] });
    },
  );

  it.each([
    [
      'heater-step.csv',
      { temperatureColumn: ['T1'], unit: 'C' as const },
      { target: '45C', hold: '60s', closedAt: '0s' },
    ],
    ['radiant-heating.csv', { temperatureColumn: ['T_back_2'] }, { target: '200C', hold: '60s' }],
  ])(
    'a real record of somebody’s heating, %s, replays from the store as from the file',
    async (name, how, rules) => {
      const { store } = place();
      const file = join(TRACES, name);
      await brought(store, [file], { ...OF_A_TRIAL, ...how, ...rules });
      expect(replayedFromStore(store)).toEqual(analyseSource(await openSource(file, how), rules).results);
    },
  );

  it('keeps its rows as lines and says in its head where they are from', async () => {
    const { folder, store } = place();
    const text = logText(PLAIN_LOG);
    await brought(store, [writtenFile(folder, 'log.csv', text)], OF_A_TRIAL);
    withStoreAt(store, (open) => {
      const [id = ''] = open.recordingIds();
      const recording = open.recording(id);
      const lines = [...(recording?.entries() ?? [])].map((entry) =>
        entry.kind === 'line' ? entry.text : '',
      );
      expect(lines).toEqual(text.trimEnd().split('\n'));
      expect(recording?.head).toMatchObject({
        simulated: false,
        assemblyName: 'WB-212',
        pressName: 'North',
        further: { 'imported-from': 'log.csv' },
      });
      expect(recording?.soundness).toEqual({ kind: 'sound' });
    });
  });

  it('takes target, hold and platens from assembly and press in the store, an option before them', async () => {
    const { folder, store } = place();
    const file = writtenFile(folder, 'log.csv', logText(PLAIN_LOG));
    withStoreAt(store, (open) => {
      open.saveAssembly({ ...assembly('WB-212'), targetC: 150, holdS: 33 });
      open.savePress({ ...press('North'), platenSetPointC: { upper: 230, lower: 229 } });
    });
    const { files } = await brought(store, [file], { ...OF_A_TRIAL, hold: '44s' });
    expect(files[0]).toMatchObject({
      head: { targetC: 150, holdS: 44, platenSetPointC: { upper: 230, lower: 229 } },
    });
  });

  it('makes the trial, its press and its assembly where they are new; the trial is closed', async () => {
    const { folder, store } = place();
    await brought(store, [writtenFile(folder, 'log.csv', logText(PLAIN_LOG))], {
      ...OF_A_TRIAL,
      trial: 'lot-7',
    });
    withStoreAt(store, (open) => {
      expect(open.trials()).toEqual([
        expect.objectContaining({
          trialId: 'lot-7',
          ...{ assemblyName: 'WB-212', pressName: 'North' },
          simulated: false,
        }),
      ]);
      expect(open.trials()[0]?.closedAt).not.toBeNull();
      expect(open.presses().map(({ name }) => name)).toEqual(['North']);
      expect(open.assemblies().map(({ name }) => name)).toEqual(['WB-212']);
    });
  });

  it('several files go into one trial; the same file twice, also under another name, adds nothing', async () => {
    const { folder, store } = place();
    const one = writtenFile(folder, 'one.csv', logText(PLAIN_LOG));
    const two = writtenFile(folder, 'two.csv', logText({ ...PLAIN_LOG, stepS: 0.4 }));
    const copy = writtenFile(folder, 'copy of one.csv', logText(PLAIN_LOG));
    const { files } = await brought(store, [one, two, copy], OF_A_TRIAL);
    expect(files.map((file) => 'alreadyThere' in file)).toEqual([false, false, true]);
    const before = rowCounts(store);
    expect(before).toMatchObject({ trials: 1, recordings: 2, imports: 2 });
    // Neither names nor press are needed to find that out, and no empty trial is made.
    const again = await brought(store, [copy, two, one]);
    expect(again.files.every((file) => 'alreadyThere' in file)).toBe(true);
    expect(rowCounts(store)).toEqual(before);
  });

  it('--again brings a file in once more only where it is read otherwise', async () => {
    const { folder, store } = place();
    const file = writtenFile(folder, 'log.csv', logText(PLAIN_LOG));
    const options = { ...OF_A_TRIAL, trial: 'lot-7' };
    await brought(store, [file], options);
    const same = await brought(store, [file], { ...options, again: true });
    expect('alreadyThere' in (same.files[0] ?? {})).toBe(true);
    await brought(store, [file], { ...options, closedAt: '12s', again: true });
    expect(rowCounts(store)).toMatchObject({ trials: 1, recordings: 2 });
  });

  it('a file whose recording came over from another store, as a file of its own, is known too', async () => {
    const { folder, store } = place();
    const file = writtenFile(folder, 'log.csv', logText(PLAIN_LOG));
    await brought(store, [file], { ...OF_A_TRIAL, trial: 'lot-7' });
    const [id = ''] = withStoreAt(store, (open) => open.recordingIds());
    const text = withStoreAt(store, (open) => [...(open.recordingText(id) ?? [])].join(''));
    const other = join(folder, 'other.db');
    await brought(other, [writtenFile(folder, 'log.dwell.txt', text)]);
    expect(replayedFromStore(other)).toEqual(replayedFromStore(store));
    const before = rowCounts(other);
    for (const again of [false, true]) {
      const { files } = await brought(other, [file], { ...OF_A_TRIAL, trial: 'lot-7', again });
      expect(files).toEqual([
        { path: file, alreadyThere: { recordingId: id, trialId: 'lot-7', importedAt: null } },
      ]);
    }
    expect(rowCounts(other)).toEqual(before);
  });

  it('one bad file among good ones: nothing is added', async () => {
    const { folder, store } = place();
    const good = writtenFile(folder, 'good.csv', logText(PLAIN_LOG));
    const bad = writtenFile(folder, 'bad.csv', 'a;b\nno;numbers\n');
    await expect(brought(store, [good, bad], OF_A_TRIAL)).rejects.toBeInstanceOf(DwellwrightError);
    expect(rowCounts(store)).toMatchObject({ trials: 0, recordings: 0, imports: 0, presses: 0 });
  });
});

describe('refused by name, with the option to add', () => {
  it('no assembly, then no press', async () => {
    const { folder, store } = place();
    const file = writtenFile(folder, 'log.csv', logText(PLAIN_LOG));
    await expect(brought(store, [file])).rejects.toThrow(refused('import-name-missing'));
    await expect(brought(store, [file], { assembly: 'WB-212' })).rejects.toThrow(/no press named/);
  });

  it('another press, target or hold than the trial has; readings of the simulated reader among real ones', async () => {
    const { folder, store } = place();
    const file = writtenFile(folder, 'log.csv', logText(PLAIN_LOG));
    const other = writtenFile(folder, 'other.csv', logText({ ...PLAIN_LOG, stepS: 0.4 }));
    await brought(store, [file], { ...OF_A_TRIAL, trial: 'lot-7' });
    for (const options of [{ press: 'South' }, { assembly: 'WB-150' }, { target: '300F' }, { hold: '60s' }])
      await expect(brought(store, [other], { ...options, trial: 'lot-7' })).rejects.toThrow(
        refused('import-trial-differs'),
      );
    await expect(
      brought(store, [join(ROOT, 'recordings', 'wb-212-north-run-1.dwell.txt')], { trial: 'lot-7' }),
    ).rejects.toThrow(refused('import-simulated-mixed'));
    await expect(brought(store, [other], { ...OF_A_TRIAL, trial: 'a b' })).rejects.toThrow(
      refused('import-trial-differs'),
    );
    expect(rowCounts(store)).toMatchObject({ trials: 1, recordings: 1 });
  });

  it('a layout that is not there, and an empty name for one', async () => {
    const { folder, store } = place();
    const file = writtenFile(folder, 'log.csv', logText(PLAIN_LOG));
    await expect(brought(store, [file], { ...OF_A_TRIAL, layout: 'desk' })).rejects.toThrow(
      refused('layout-unknown'),
    );
    await expect(brought(store, [file], { ...OF_A_TRIAL, saveLayout: ' ' })).rejects.toThrow(
      refused('layout-empty'),
    );
  });
});

describe('a named layout', () => {
  const form: LogForm = { heading: 'a,b,c', row: (timeS, c) => `${timeS * 1000},${c.toFixed(2)},5` };
  it('is saved from options and answers both, and reads the next file without them', async () => {
    const { folder, store } = place();
    const first = writtenFile(folder, 'first.csv', logText(form));
    const next = writtenFile(folder, 'next.csv', logText({ ...form, stepS: 0.4 }));
    const how = { timeColumn: 'a', timeUnit: 'ms' as const, temperatureColumn: ['b'] };
    const outcome = await brought(
      store,
      [first],
      { ...OF_A_TRIAL, ...how, saveLayout: 'desk logger' },
      async (question) => (question.includes('Unit of the temperatures') ? 'F' : ''),
    );
    expect(outcome.layoutSaved).toBe('desk logger');
    expect(withStoreAt(store, (open) => open.exchange.layouts())).toEqual([
      {
        name: 'desk logger',
        options: { timeColumn: 'a', timeUnit: 'ms', temperatureColumns: ['b'], unit: 'F' },
        savedAt: '2026-03-02T12:00:00.000Z',
      },
    ]);
    await brought(store, [next], { ...OF_A_TRIAL, layout: 'desk logger' });
    // An option goes before what the layout says.
    await brought(store, [next], { ...OF_A_TRIAL, layout: 'desk logger', unit: 'C', again: true });
    const units = withStoreAt(store, (open) =>
      open
        .recordingIds()
        .map((id) => /"unit":"(.)"/.exec(open.recording(id)?.head.further['logger-layout'] ?? '')?.[1]),
    );
    expect(units).toEqual(['F', 'F', 'C']);
  });
});

describe('what a file does not say is asked for', () => {
  it('unit, columns, times, names and press closed, one question each; a wrong answer is asked again', async () => {
    const { folder, store } = place();
    const file = writtenFile(
      folder,
      'log.csv',
      logText({ heading: '', row: (_t, c) => `x,${c.toFixed(2)},7,8` }),
    );
    const answers: Readonly<Record<string, string[]>> = {
      'time column': ['9', ''],
      'row to row': ['0.5s'],
      'column of the bond line': ['2'],
      'Unit of the temperatures': ['C'],
      Assembly: ['WB-212'],
      'Press, such': ['North'],
      'Press closed': [`${CLOSED_AT_S}s`],
    };
    const outcome = await brought(store, [file], { target: '350F' }, async (question, accept) => {
      const last = question.split('\n').at(-1) ?? '';
      const topic = Object.keys(answers).find((words) => last.includes(words)) ?? '';
      const answer = answers[topic]?.shift();
      if (answer === undefined) throw new Error(`asked for more than once, or for nothing known: ${last}`);
      expect(accept(answer)).toBeNull();
      return answer;
    });
    expect(Object.values(answers).flat()).toEqual([]);
    const [added] = outcome.files;
    expect(added && 'results' in added ? added.results[0]?.soakTimeS : null).toBeCloseTo(SOAK_S, 0);
    expect(replayedFromStore(store)[0]?.pressClosed).toMatchObject({ by: 'option', timeS: CLOSED_AT_S });
  });

  it('an answer that cannot be is told what is wrong with it', async () => {
    const { folder, store } = place();
    const file = writtenFile(folder, 'log.csv', logText({ ...PLAIN_LOG, heading: 'Time (s),Bond line' }));
    let wrong: string | null = null;
    await brought(store, [file], OF_A_TRIAL, async (question, accept) => {
      wrong ??= accept('X');
      return question.includes('Unit') ? 'c' : '';
    });
    expect(wrong).toBe('Write one of C, F, K.');
  });
});

describe('our own recordings', () => {
  it(`${RECORDINGS.length} shipped ones: byte for byte, each once, same runs as from the file`, async () => {
    const { store } = place();
    const { files } = await brought(store, RECORDINGS);
    expect(files.every((file) => 'head' in file)).toBe(true);
    withStoreAt(store, (open) => {
      for (const path of RECORDINGS) {
        const text = readFileSync(path, 'utf8');
        const id = /^recording-id: (.*)$/m.exec(text)?.[1] ?? '';
        expect([...(open.recordingText(id) ?? [])].join('')).toBe(text);
      }
    });
    const fromFiles = [];
    for (const path of RECORDINGS) fromFiles.push(...analyseSource(await openSource(path, {}), {}).results);
    expect(replayedFromStore(store)).toEqual(fromFiles);
    // Warm-ups and surveys have no probe on a bond line: kept, in no trial and with no run.
    const inNoTrial = withStoreAt(store, (open) => {
      const inTrials = new Set(open.trials().flatMap((one) => one.recordingIds));
      return open.recordingIds().filter((id) => !inTrials.has(id));
    });
    expect(inNoTrial.length).toBeGreaterThan(0);
    for (const id of inNoTrial) expect(id).toMatch(/^simulated-(warm-up|survey)-/);
    expect(verifyStore(store)).toMatchObject({ recordings: RECORDINGS.length, problems: [] });
    const before = rowCounts(store);
    await brought(store, RECORDINGS);
    expect(rowCounts(store)).toEqual(before);
  });

  const [shipped = ''] = RECORDINGS.filter((path) => path.includes('wb-212-north-run-1'));
  const text = readFileSync(shipped, 'utf8');

  it('an edited copy (CR LF, byte order mark) is the same recording; stored as it was written', async () => {
    const { folder, store } = place();
    const copy = writtenFile(folder, 'copy.dwell.txt', `\uFEFF${text.replaceAll('\n', '\r\n')}`);
    await brought(store, [copy]);
    const again = await brought(store, [shipped]);
    expect('alreadyThere' in (again.files[0] ?? {})).toBe(true);
    withStoreAt(store, (open) =>
      expect([...(open.recordingText('simulated-wb-212-north-run-1') ?? [])].join('')).toBe(text),
    );
  });

  it('one that was never closed comes in as far as it is whole, and is told as not closed', async () => {
    const { folder, store } = place();
    const cut = text.slice(0, Math.floor(text.length / 2));
    const { files } = await brought(store, [writtenFile(folder, 'cut.dwell.txt', cut)]);
    expect(files[0]).toMatchObject({ soundness: { kind: 'not-closed' } });
    expect(verifyStore(store)).toMatchObject({ notClosed: ['simulated-wb-212-north-run-1'], problems: [] });
    withStoreAt(store, (open) =>
      expect([...(open.recordingText('simulated-wb-212-north-run-1') ?? [])].join('')).toBe(
        cut.slice(0, cut.lastIndexOf('\n') + 1),
      ),
    );
  });

  it.each([
    ['import-altered', text.replace('24.50', '24.75')],
    ['import-broken', text.replace(/\n([\d.]+) line /, '\n$1 lime ')],
  ])('%s: refused with exit code 1, the store as it was', async (code, altered) => {
    const { folder, store } = place();
    const file = writtenFile(folder, 'altered.dwell.txt', altered);
    await expect(brought(store, [file])).rejects.toThrow(expect.objectContaining({ code, exitCode: 1 }));
    expect(rowCounts(store)).toMatchObject({ recordings: 0, trials: 0 });
  });

  it('another recording under an id that is taken is refused', async () => {
    const { folder, store } = place();
    await brought(store, [writtenFile(folder, 'cut.dwell.txt', text.slice(0, 9_000))]);
    await expect(brought(store, [shipped])).rejects.toThrow(refused('import-recording-differs'));
  });

  it('options that say how a logger’s file is read are refused for them', async () => {
    const { store } = place();
    await expect(brought(store, [shipped], { target: '300F', unit: 'C' })).rejects.toThrow(
      'came --target, --unit',
    );
  });
});

const assembly = (name: string) => ({
  name,
  ringOuterDiameterMm: null,
  ringInnerDiameterMm: null,
  carrier: null,
  targetC: 176.66666666666666,
  holdS: 120,
  adhesive: null,
  dataSheetRevision: null,
  highestDwellS: null,
  highestPeakC: null,
  leastRecoveryS: null,
});
const press = (name: string) => ({
  name,
  ramBoreMm: null,
  ramRodMm: null,
  rams: 1,
  gaugeDivisionPsi: null,
  platenSetPointC: null,
  timerStartsAt: 'closing' as const,
  timerOffsetS: 0,
  timerStepS: 1,
});

describe('any bytes', () => {
  const piece = fc.constantFrom(
    '0',
    '1',
    '2.5',
    '1,5',
    '-1000',
    'nan',
    '"',
    ',',
    ';',
    '\t',
    '|',
    ' ',
    '\n',
    '\r\n',
    '\r',
    'Time (s)',
    'T1 (C)',
    '°F',
    '10:00:00',
    '2024-05-01',
    '1e308',
    '9999999999999999999',
    '\u001b[2J',
    '\uFEFF',
    'dwellwright-recording: 1\n',
    'begin\n',
    'recording-id: a\n',
    '0.000001 line 1\n',
    'end 1 sha256 ',
    'Ω',
    '\ud800',
  ); // prettier-ignore
  const table = fc
    .tuple(
      fc.array(piece, { maxLength: 12 }),
      fc.array(fc.tuple(fc.double(), fc.double()), { maxLength: 12 }),
    )
    .map(
      ([head, rows]) =>
        `${head.join('')}\n${rows.map(([a, b], at) => `${at % 3 ? at : a},${b}`).join('\n')}\n`,
    );
  const damaged = fc
    .tuple(fc.nat(), fc.integer({ min: 0, max: 255 }), fc.boolean())
    .map(([at, byte, own]) => {
      const bytes = Buffer.from(own ? OWN : LOG);
      bytes[at % bytes.length] = byte;
      return at % 3 === 0 ? bytes.subarray(0, at % bytes.length) : bytes;
    });
  const OWN = readFileSync(join(ROOT, 'recordings', 'wb-212-north-run-1.dwell.txt')).subarray(0, 20_000);
  const LOG = Buffer.from(logText({ ...PLAIN_LOG, stepS: 4 }));

  it('give an error that says what to do, or a sound recording that replays the same; the store stays whole (200 files)', async () => {
    const { folder, store } = place();
    withStoreAt(store, () => {});
    let added = 0;
    let refusals = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(
          fc.uint8Array({ maxLength: 400 }),
          table.map((text) => Buffer.from(text)),
          damaged,
        ),
        fc.constantFrom(
          {},
          { unit: 'C' as const },
          { unit: 'F' as const, interval: '0.5s', temperatureColumn: ['2'] },
        ),
        async (bytes, how) => {
          const file = writtenFile(folder, 'any.csv', bytes);
          const before = rowCounts(store);
          try {
            const { files } = await brought(store, [file], { ...OF_A_TRIAL, trial: 'any', ...how });
            const [one] = files;
            if (one !== undefined && 'head' in one) added += 1;
          } catch (error) {
            expect(error).toBeInstanceOf(DwellwrightError);
            expect((error as DwellwrightError).remedy).toMatch(/\w/);
            expect(rowCounts(store)).toEqual(before);
            refusals += 1;
          }
        },
      ),
      { numRuns: 200, seed: 20260303 },
    );
    expect(refusals).toBeGreaterThan(50);
    expect(added).toBeGreaterThan(20);
    expect(verifyStore(store).problems).toEqual([]);
    const stored = withStoreAt(store, (open) => open.trials().flatMap((one) => open.trialRuns(one.trialId)));
    expect(replayedFromStore(store)).toEqual(stored.map((run) => run.result));
  });
});
