import type { RunResult } from '../run/RunResult.ts';
import type { CycleFacts, CycleFlag, CycleResult, HoldSeen } from './BondingCycle.ts';
import type { BondingJob, CycleUnderWay } from './BondingState.ts';

/** A cycle this much short of its dwell is not called early, s: less than a hand at a key can tell. Judgement, no source. */
const EARLY_S = 0.2;
const GRAVEST: readonly CycleResult[] = ['left', 'opened-early', 'hold-not-verified', 'platen-out-of-band'];

/** Opened before the dwell was over. */
export function isEarly(dwellHeldS: number, dwellWantedS: number): boolean {
  return dwellHeldS < dwellWantedS - EARLY_S;
}

/** The gravest of what was noticed. */
export function cycleResult(flags: readonly CycleFlag[]): CycleResult {
  const all = new Set<string>(flags.map((flag) => (flag === 'program-stopped' ? 'left' : flag)));
  return GRAVEST.find((one) => all.has(one)) ?? 'done';
}

export interface CycleEnd {
  readonly probe: boolean;
  /** Stands for the opening where that was not seen, µs. */
  readonly endUs: number;
  /** Why the opening was not seen. @default 'left' */
  readonly unwatched?: 'left' | 'program-stopped';
}

/**
 * What a cycle came to. `result` is the run that the readings gave, null without a probe or where none came of them:
 * with a probe in place its hold then counts as not verified.
 */
export function finishCycle(
  cycle: CycleUnderWay,
  job: BondingJob,
  result: RunResult | null,
  { probe, endUs, unwatched = 'left' }: CycleEnd,
): CycleFacts {
  const { recipe } = job;
  const dwellHeldS = Math.max(0, ((cycle.openedUs ?? endUs) - cycle.closedUs) / 1e6);
  const held = result?.hold ?? null;
  const met = held?.verified === true && held.countedS >= recipe.holdS;
  const hold: HoldSeen = !probe ? 'not-measured' : met ? 'verified' : 'not-verified';
  const peakC = result?.peakC ?? null;
  const flags: CycleFlag[] = [];
  if (cycle.openedUs === null) flags.push(unwatched);
  else if (isEarly(dwellHeldS, recipe.dwellS)) flags.push('opened-early');
  if (hold === 'not-verified') flags.push('hold-not-verified');
  if (cycle.platenOut) flags.push('platen-out-of-band');
  if (cycle.wasOutside) flags.push('outside-recipe-band');
  if (peakC !== null && recipe.highestPeakC !== null && peakC > recipe.highestPeakC)
    flags.push('peak-above-limit');
  if (cycle.tooSoon) flags.push('closed-too-soon');
  return {
    closedUs: cycle.closedUs,
    closedBy: cycle.closedBy,
    dwellWantedS: recipe.dwellS,
    dwellHeldS,
    targetC: recipe.targetC,
    holdWantedS: recipe.holdS,
    holdCountedS: held?.countedS ?? null,
    hold,
    platensAtClosingC: cycle.platensC,
    lowestC: result?.lowestAfterCrossingC ?? null,
    peakC,
    againstBand: cycle.wasOutside ? 'outside' : cycle.bandSeen ? 'inside' : 'not-compared',
    recordedAtS: cycle.closedS,
    result: cycleResult(flags),
    flags,
  };
}
