import { expect, it } from 'vitest';
import { openStore } from '../../../src/adapters/sqlite/open-store.ts';
import type { ClosingUnderWay } from '../../../src/core/bonding/ClosingUnderWay.ts';
import { cycleOf } from './samples.ts';

const closing = (cycleId: string, dwellHeldS: number): ClosingUnderWay => ({
  cycle: { ...cycleOf(cycleId), dwellHeldS },
  seenAt: '2026-11-25T14:00:00.000Z',
  hostName: 'press-laptop',
  processId: 4711,
});

it('a closing under way is renewed in its place, and gone once its cycle is logged', () => {
  const store = openStore({ path: ':memory:' });
  store.saveClosing(closing('a', 1));
  store.saveClosing(closing('b', 5));
  store.saveClosing(closing('a', 2));
  expect(store.closings().map(({ cycle }) => [cycle.cycleId, cycle.dwellHeldS])).toEqual([
    ['a', 2],
    ['b', 5],
  ]);
  store.saveCycle(cycleOf('a'));
  expect(store.closings().map(({ cycle }) => cycle.cycleId)).toEqual(['b']);
  expect(store.cycles().map(({ cycleId }) => cycleId)).toEqual(['a']);
  store.dropClosing('b');
  expect(store.closings()).toEqual([]);
  store.close();
});

it('a cycle that cannot be logged leaves its closing under way', () => {
  const store = openStore({ path: ':memory:' });
  store.saveCycle(cycleOf('a'));
  store.saveClosing(closing('a', 1));
  // Logged already: its number is taken.
  expect(() => store.saveCycle(cycleOf('a'))).toThrow();
  expect(store.closings()).toHaveLength(1);
  store.close();
});
