import { join } from 'node:path';
import { expect, test } from 'vitest';
import { verifyStore } from '../../../src/adapters/sqlite/verify-store.ts';
import { recordingParts } from '../../../src/core/exchange/recording-parts.ts';
import type { RecordingPart } from '../../../src/core/exchange/StoreExchange.ts';
import { formatRecording } from '../../../src/core/recording/format-recording.ts';
import type { Store } from '../../../src/core/store/Store.ts';
import { rowCounts } from './filled-store.ts';
import { headOf, lineAt, openedStore, resultOf, temporaryFolder } from './samples.ts';

const file = {
  fileSha256: 'ab'.repeat(32),
  fileName: 'log.csv',
  readAs: '',
  importedAt: '2026-03-02T12:00:00.000Z',
};
const entries = Array.from({ length: 4_500 }, (_, at) => lineAt(at * 1_000));
const textOf = (id: string): string => [...formatRecording(headOf(id), entries)].join('');
const add = (store: Store, id: string, parts: Iterable<RecordingPart> = recordingParts([textOf(id)])): void =>
  store.exchange.addRecording({ recordingId: id, trialId: 'lot-7', simulated: true, parts, file });

test('a recording of 4,500 entries is kept byte for byte, closed, and known by the file it came from', () => {
  const path = join(temporaryFolder(), 'store.db');
  const store = openedStore({ path });
  add(store, 'a');
  expect([...(store.recordingText('a') ?? [])].join('')).toBe(textOf('a'));
  expect(store.recording('a')?.soundness).toEqual({ kind: 'sound' });
  expect(store.exchange.importsOf(file.fileSha256)).toEqual([
    { ...file, recordingId: 'a', trialId: 'lot-7' },
  ]);
  expect(store.exchange.importsOf('cd'.repeat(32))).toEqual([]);
  expect(verifyStore(path)).toMatchObject({ sound: 1, problems: [] });
});

test('an id that is taken is refused, and what was there stays', () => {
  const store = openedStore({ path: ':memory:' });
  add(store, 'a');
  expect(() => add(store, 'a')).toThrow(expect.objectContaining({ code: 'store-recording-exists' }));
  expect([...(store.recordingText('a') ?? [])].join('')).toBe(textOf('a'));
});

test('parts that end in a failure leave nothing behind, nor does the trial around them', () => {
  const path = join(temporaryFolder(), 'store.db');
  const store = openedStore({ path });
  const before = rowCounts(path);
  function* failing(): Generator<RecordingPart> {
    for (const part of recordingParts([textOf('a')])) {
      if (part.kind === 'closing') throw new Error('the stick was pulled');
      yield part;
    }
  }
  expect(() =>
    store.exchange.atomically(() => {
      store.startTrial({
        trialId: 'lot-7',
        assemblyName: 'WB-212',
        pressName: 'North',
        startedAt: '2026-03-02T08:00:00.000Z',
        simulated: true,
      });
      add(store, 'a', failing());
      store.saveRunResult('a', resultOf(1));
    }),
  ).toThrow('the stick was pulled');
  expect(rowCounts(path)).toEqual(before);
});

test('a layout keeps what was said, and saving its name again replaces it', () => {
  const store = openedStore({ path: ':memory:' });
  const savedAt = '2026-03-02T12:00:00.000Z';
  store.exchange.saveLayout({ name: 'desk', options: { unit: 'C', timeColumn: 'Time' }, savedAt });
  store.exchange.saveLayout({
    name: 'attic',
    options: { intervalS: 0.5, temperatureColumns: ['2', '3'] },
    savedAt,
  });
  store.exchange.saveLayout({ name: 'desk', options: { unit: 'F', timeUnit: 'ms' }, savedAt });
  expect(store.exchange.layouts()).toEqual([
    { name: 'attic', options: { intervalS: 0.5, temperatureColumns: ['2', '3'] }, savedAt },
    { name: 'desk', options: { unit: 'F', timeUnit: 'ms' }, savedAt },
  ]);
  expect(() => store.exchange.saveLayout({ name: 'x', options: { intervalS: Number.NaN }, savedAt })).toThrow(
    expect.objectContaining({ code: 'store-not-finite' }),
  );
});
