import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatRecording } from '../../../src/core/recording/format-recording.ts';
import type { RecordingEntry } from '../../../src/core/recording/RecordingEntry.ts';
import { anyEntry } from '../../core/recording/arbitraries.ts';
import { headOf, lineAt, north, openedStore, recipeOf, resultOf, temporaryFolder, wb212 } from './samples.ts';

const trial = {
  trialId: 't1',
  assemblyName: 'WB-212',
  pressName: 'North',
  startedAt: '2026-03-02T08:00:00+01:00',
  simulated: true,
};

const stores = [
  ['in memory', () => openedStore({ path: ':memory:' })],
  ['in a file', () => openedStore({ path: join(temporaryFolder(), 'made', 'store.db') })],
] as const;

describe.each(stores)('a store %s', (where, open) => {
  test('says journal mode and synchronous FULL as read back', () => {
    const journalMode = where === 'in memory' ? 'memory' : 'wal';
    expect(open().durability).toEqual({ journalMode, synchronous: 'FULL' });
  });

  test('gives back every entry of a recording, sound once it is closed', () => {
    const store = open();
    const entries: readonly RecordingEntry[] = [
      { ...lineAt(0, '\x00\xff half a line\r'), wholeness: 'start-unknown' } as RecordingEntry,
      lineAt(100_000, ''),
      { kind: 'mark', arrivedUs: 150_000, by: 'key', mark: { kind: 'spoilt', reason: 'probe slipped' } },
      { kind: 'host', arrivedUs: 200_000, event: 'port-lost', detail: '' },
    ];
    const writer = store.startRecording(headOf('a'));
    for (const entry of entries) writer.append(entry);
    writer.flush();
    expect(store.recording('a')?.soundness).toEqual({ kind: 'not-closed' });
    expect([...(store.recording('a')?.entries() ?? [])]).toEqual(entries);
    writer.close();
    expect(store.recording('a')?.head).toEqual(headOf('a'));
    expect(store.recording('a')?.soundness).toEqual({ kind: 'sound' });
    expect([...(store.recording('a')?.entries() ?? [])]).toEqual(entries);
  });

  test('holds the very text of the recording file, whatever the entries and however they were grouped', () => {
    const store = open();
    let number = 0;
    fc.assert(
      fc.property(fc.array(fc.tuple(anyEntry, fc.boolean()), { maxLength: 10 }), (pairs) => {
        number += 1;
        const head = headOf(`r${number}`);
        const writer = store.startRecording(head);
        for (const [entry, flushed] of pairs) {
          writer.append(entry);
          if (flushed) writer.flush();
        }
        writer.close();
        const file = [
          ...formatRecording(
            head,
            pairs.map(([entry]) => entry),
          ),
        ].join('');
        expect([...(store.recordingText(head.recordingId) ?? [])].join('')).toBe(file);
      }),
      { numRuns: 60 },
    );
  });

  test('takes 10,000 entries and gives them back in order over many blocks, also while it is written to', () => {
    const store = open();
    const writer = store.startRecording(headOf('long'));
    for (let number = 0; number < 10_000; number += 1) {
      writer.append(lineAt(number * 1_000));
      if (number % 50 === 0) writer.flush();
    }
    writer.flush();
    let expectedUs = 0;
    for (const entry of store.recording('long')?.entries() ?? []) {
      expect(entry.arrivedUs).toBe(expectedUs);
      if (expectedUs === 5_000_000) {
        writer.append(lineAt(20_000_000));
        writer.flush();
      }
      expectedUs += 1_000;
      if (expectedUs === 10_000_000) break;
    }
    expect(expectedUs).toBe(10_000_000);
    writer.close();
    expect(store.recording('long')?.soundness).toEqual({ kind: 'sound' });
  });

  test('refuses a second recording with the same id, and entries after the closing', () => {
    const store = open();
    const writer = store.startRecording(headOf('a'));
    expect(() => store.startRecording(headOf('a'))).toThrow(
      expect.objectContaining({ code: 'store-recording-exists' }),
    );
    writer.close();
    writer.close();
    expect(() => writer.append(lineAt(0))).toThrow(
      expect.objectContaining({ code: 'store-recording-closed' }),
    );
    expect(() => writer.flush()).toThrow(expect.objectContaining({ code: 'store-recording-closed' }));
    expect(store.recording('a')?.soundness).toEqual({ kind: 'sound' });
  });

  test('knows no recording that is not there', () => {
    const store = open();
    expect(store.recording('x')).toBeUndefined();
    expect(store.recordingText('x')).toBeUndefined();
    expect(store.recordingIds()).toEqual([]);
    expect(() => store.saveRunResult('x', resultOf(1))).toThrow(
      expect.objectContaining({ code: 'store-no-recording' }),
    );
  });

  test('keeps presses and assemblies by name; saving again replaces', () => {
    const store = open();
    store.savePress(north);
    store.savePress({ ...north, name: 'South', platenSetPointC: null, ramBoreMm: null });
    store.savePress({ ...north, timerStepS: 5 });
    expect(store.presses()).toEqual([
      { ...north, timerStepS: 5 },
      { ...north, name: 'South', platenSetPointC: null, ramBoreMm: null },
    ]);
    store.saveAssembly(wb212);
    store.saveAssembly({ ...wb212, adhesive: 'heat-curing' });
    expect(store.assemblies()).toEqual([{ ...wb212, adhesive: 'heat-curing' }]);
    store.saveAssembly({ ...wb212, netFacingPsi: { low: 150, high: 170 } });
    expect(store.assemblies()).toEqual([{ ...wb212, netFacingPsi: { low: 150, high: 170 } }]);
    store.saveAssembly(wb212);
    expect(store.assemblies()).toEqual([wb212]);
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, undefined as unknown as number])(
    'refuses %s where a number is due, and keeps what was there',
    (value) => {
      const store = open();
      store.savePress(north);
      const refused = expect.objectContaining({ code: 'store-not-finite' });
      expect(() => store.savePress({ ...north, timerStepS: value })).toThrow(refused);
      expect(() => store.saveAssembly({ ...wb212, targetC: value })).toThrow(refused);
      expect(store.presses()).toEqual([north]);
      expect(store.assemblies()).toEqual([]);
    },
  );

  test.each([Number.NaN, Number.NEGATIVE_INFINITY])(
    'refuses a run result or recipe that holds %s',
    (value) => {
      const store = open();
      store.startRecording(headOf('a')).close();
      const refused = expect.objectContaining({ code: 'store-not-finite' });
      expect(() => store.saveRunResult('a', resultOf(1, { soakTimeS: value }))).toThrow(refused);
      expect(() => store.saveRecipe(recipeOf({ soakS: value }))).toThrow(refused);
      expect(store.recipes()).toEqual([]);
    },
  );

  test('lists trials with their recordings; closing twice keeps the first time', () => {
    const store = open();
    store.startTrial(trial);
    store.startRecording(headOf('a', { trialId: 't1' })).close();
    store.startRecording(headOf('other')).close();
    store.startRecording(headOf('b', { trialId: 't1' })).close();
    expect(() => store.startTrial(trial)).toThrow(expect.objectContaining({ code: 'store-trial-exists' }));
    expect(store.trials()).toEqual([{ ...trial, closedAt: null, recordingIds: ['a', 'b'] }]);
    store.closeTrial('t1', '2026-03-02T09:00:00+01:00');
    store.closeTrial('t1', '2026-03-02T09:30:00+01:00');
    expect(store.trials()[0]?.closedAt).toBe('2026-03-02T09:00:00+01:00');
    expect(() => store.closeTrial('t2', 'now')).toThrow(expect.objectContaining({ code: 'store-no-trial' }));
  });

  test('gives the runs of a trial in order, each with its latest result and latest decision', () => {
    const store = open();
    store.startTrial(trial);
    for (const id of ['b', 'a']) store.startRecording(headOf(id, { trialId: 't1' })).close();
    store.startRecording(headOf('elsewhere')).close();
    for (const id of ['a', 'b', 'elsewhere']) store.saveRunResult(id, resultOf(1));
    store.saveRunResult('b', resultOf(2, { verdict: 'suspect' }));
    store.saveRunResult('b', resultOf(1, { ruleVersion: 2, soakTimeS: 53.6 }));
    const decision = { recordingId: 'b', runNumber: 2, decidedAt: '2026-03-02T09:00:00+01:00' };
    store.decideRun({ ...decision, kind: 'taken-in', reason: 'start only 2 °C high' });
    store.decideRun({ ...decision, kind: 'set-aside', reason: 'ring was re-used' });
    store.decideRun({ ...decision, recordingId: 'a', runNumber: 1, kind: 'set-aside', reason: 'wrong part' });
    store.decideRun({
      ...decision,
      recordingId: 'a',
      runNumber: 1,
      kind: 'automatic',
      reason: 'right part after all',
    });
    expect(store.trialRuns('t1')).toEqual([
      {
        source: 'b',
        recordingId: 'b',
        result: resultOf(1, { ruleVersion: 2, soakTimeS: 53.6 }),
        decision: { kind: 'automatic' },
      },
      {
        source: 'b',
        recordingId: 'b',
        result: resultOf(2, { verdict: 'suspect' }),
        decision: { kind: 'set-aside', reason: 'ring was re-used' },
      },
      { source: 'a', recordingId: 'a', result: resultOf(1), decision: { kind: 'automatic' } },
    ]);
    expect(store.trialRuns('none')).toEqual([]);
  });

  test('numbers recipe versions for each assembly and press from 1', () => {
    const store = open();
    expect(store.saveRecipe(recipeOf()).version).toBe(1);
    expect(store.saveRecipe(recipeOf({ dwellS: 178 })).version).toBe(2);
    expect(store.saveRecipe(recipeOf({ pressName: 'South' })).version).toBe(1);
    expect(store.recipes()).toEqual([
      { ...recipeOf(), version: 1 },
      { ...recipeOf({ dwellS: 178 }), version: 2 },
      { ...recipeOf({ pressName: 'South' }), version: 1 },
    ]);
  });

  test('remembers settings', () => {
    const store = open();
    expect(store.setting('unit')).toBeUndefined();
    store.saveSetting('unit', 'F');
    store.saveSetting('unit', 'C');
    expect(store.setting('unit')).toBe('C');
  });

  test('says that it is closed, by name', () => {
    const store = open();
    store.close();
    store.close();
    expect(() => store.presses()).toThrow(expect.objectContaining({ code: 'store-closed' }));
  });

  test('closed while a recording is read from it, says so by name', () => {
    const store = open();
    const writer = store.startRecording(headOf('a'));
    for (let number = 0; number < 100; number += 1) {
      writer.append(lineAt(number));
      writer.flush();
    }
    const recording = store.recording('a');
    const reading = recording?.entries()[Symbol.iterator]();
    expect(reading?.next().value).toEqual(lineAt(0));
    store.close();
    const closed = expect.objectContaining({ code: 'store-closed' });
    expect(() => {
      while (reading?.next().done === false);
    }).toThrow(closed);
    expect(() => recording?.soundness).toThrow(closed);
    expect(() => writer.close()).toThrow(closed);
  });
});
