import { expect, it } from 'vitest';
import type { BondingCycle } from '../../../src/core/bonding/BondingCycle.ts';
import type { ClosingUnderWay } from '../../../src/core/bonding/ClosingUnderWay.ts';
import { createCycleLog } from '../../../src/program/bonding/create-cycle-log.ts';
import { DrivenBonding } from '../../core/bonding/driven-bonding.ts';

/** A store that can be full. */
function fakeStore() {
  const closings = new Map<string, ClosingUnderWay>();
  const cycles: BondingCycle[] = [];
  const store = {
    full: false,
    closings,
    cycles,
    saveClosing(closing: ClosingUnderWay) {
      if (store.full) throw new Error('disk is full');
      closings.set(closing.cycle.cycleId, closing);
    },
    dropClosing: (cycleId: string) => void closings.delete(cycleId),
    saveCycle(cycle: BondingCycle) {
      if (store.full) throw new Error('disk is full');
      closings.delete(cycle.cycleId);
      cycles.push(cycle);
    },
  };
  return store;
}

function logOf(store: ReturnType<typeof fakeStore>, driven: DrivenBonding) {
  return createCycleLog({
    store,
    nowUs: () => driven.timeS * 1e6,
    initials: 'AB',
    recordingId: () => 'r9',
  });
}

it('a closing is kept as it stands: not watched to the end, program stopped; under its number it is logged', () => {
  const store = fakeStore();
  const driven = new DrivenBonding().until(10).key('c').until(30);
  const log = logOf(store, driven);
  log.keep(driven.state);
  const [kept] = store.closings.values();
  expect(kept?.cycle).toMatchObject({ result: 'left', initials: 'AB', recordingId: 'r9', closedBy: 'key' });
  expect(kept?.cycle.flags).toContain('program-stopped');
  expect(kept?.cycle.dwellHeldS).toBeCloseTo(20, 1);
  driven.until(190).key('o').until(200);
  const cycle = log.log(driven.state, driven.cycles[0]!);
  log.keep(driven.state);
  expect(cycle.cycleId).toBe(kept?.cycle.cycleId);
  expect(store.cycles).toEqual([cycle]);
  expect(store.closings.size).toBe(0);
});

it('a closing that is taken back is kept no longer', () => {
  const store = fakeStore();
  const driven = new DrivenBonding().until(10).key('c').until(12);
  const log = logOf(store, driven);
  log.keep(driven.state);
  expect(store.closings.size).toBe(1);
  log.keep(driven.key('u').state);
  expect(store.closings.size).toBe(0);
});

it('a full disk loses no cycle: told, tried again at the end, thrown where it is still full', () => {
  const store = fakeStore();
  const driven = new DrivenBonding().until(10).key('c').until(190).key('o').until(200);
  const log = logOf(store, driven);
  store.full = true;
  log.log(driven.state, driven.cycles[0]!);
  expect(log.trouble).toBe('disk is full');
  expect(store.cycles).toEqual([]);
  store.full = false;
  log.close();
  expect(store.cycles).toHaveLength(1);
  store.full = true;
  log.log(driven.state, { ...driven.cycles[0]!, closedUs: 1 });
  expect(() => log.close()).toThrow('disk is full');
});
