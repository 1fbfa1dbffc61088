import type { RunResult } from '../run/RunResult.ts';
import type { BondingCycle } from './BondingCycle.ts';
import { cycleResult } from './finish-cycle.ts';

/** A cycle that the program did not watch to its end, with what its recording tells of hold, lowest and peak. */
export function withRun(cycle: BondingCycle, run: RunResult | null): BondingCycle {
  if (run === null) return cycle;
  const held = run.hold;
  const verified = held?.verified === true && held.countedS >= cycle.holdWantedS;
  const flags = cycle.flags.filter((flag) => flag !== 'hold-not-verified' || !verified);
  return {
    ...cycle,
    holdCountedS: held?.countedS ?? null,
    hold: verified ? 'verified' : 'not-verified',
    lowestC: run.lowestAfterCrossingC,
    peakC: run.peakC,
    flags,
    result: cycleResult(flags),
  };
}
