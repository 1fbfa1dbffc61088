import { describe, expect, it } from 'vitest';
import type { BondingCycle } from '../../../src/core/bonding/BondingCycle.ts';
import { isForsaken } from '../../../src/core/bonding/ClosingUnderWay.ts';
import { withRun } from '../../../src/core/bonding/with-run.ts';
import { loadedCycles, runResult } from '../screen-home/shop.ts';

const NOW = Date.parse('2026-11-25T14:00:00Z');
const seen = (agoS: number, hostName = 'press-laptop') => ({
  seenAt: new Date(NOW - agoS * 1000).toISOString(),
  hostName,
  processId: 4711,
});
const here = (runs: boolean) => ({ nowMs: NOW, hostName: 'press-laptop', runs: () => runs });

describe('a closing under way is forsaken', () => {
  it('at once where its program of this host no longer runs', () => {
    expect(isForsaken(seen(0.5), here(false))).toBe(true);
  });

  it('never within 60 s while a program of that number runs, then yes: another has the number', () => {
    expect(isForsaken(seen(59), here(true))).toBe(false);
    expect(isForsaken(seen(61), here(true))).toBe(true);
  });

  it('of another host only after 60 s without a look, whatever runs here', () => {
    expect(isForsaken(seen(30, 'other'), here(false))).toBe(false);
    expect(isForsaken(seen(61, 'other'), here(false))).toBe(true);
  });

  it('where the clock was set back by an hour, too: it is not waited out', () => {
    expect(isForsaken(seen(-3600), here(true))).toBe(true);
  });
});

describe('a forsaken closing and its recording', () => {
  const cycle: BondingCycle = {
    ...loadedCycles()[1]!.cycle,
    result: 'left',
    flags: ['program-stopped', 'hold-not-verified'],
    hold: 'not-verified',
    holdCountedS: null,
  };
  const held = (countedS: number, verified: boolean) =>
    runResult({
      peakC: 220,
      hold: { countedS, verified } as NonNullable<ReturnType<typeof runResult>['hold']>,
    });

  it('a hold of 121 s seen whole is verified, though the opening was not watched', () => {
    expect(withRun(cycle, held(121, true))).toMatchObject({
      result: 'left',
      hold: 'verified',
      holdCountedS: 121,
      flags: ['program-stopped'],
      peakC: 220,
    });
  });

  it('119 s of 120 s, or a gap in it, is not', () => {
    for (const run of [held(119, true), held(121, false)])
      expect(withRun(cycle, run)).toMatchObject({
        hold: 'not-verified',
        flags: ['program-stopped', 'hold-not-verified'],
      });
  });

  it('without a readable run it stays as it was kept', () => {
    expect(withRun(cycle, null)).toEqual(cycle);
  });
});
