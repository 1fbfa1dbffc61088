import type { TrialRun } from './TrialResult.ts';

/**
 * True when, as far as stated, all runs share one part and one probe position, so that no bound of the trial
 * holds the spread from part to part. Another carrier, a second fresh ring or a probe laid anew each count as
 * a change; what is not stated counts as unchanged, for spread may only be claimed where it was in the runs.
 */
export function partSpreadMissing(runs: readonly TrialRun[]): boolean {
  if (runs.length === 0) return false;
  const conditions = runs.map((run) => run.result.conditions);
  const carriers = new Set(conditions.flatMap(({ carrierId }) => (carrierId === null ? [] : [carrierId])));
  const freshRings = conditions.filter(({ ring }) => ring === 'fresh').length;
  const probeRelaid = conditions.slice(1).some(({ probe }) => probe === 're-laid');
  return carriers.size < 2 && freshRings < 2 && !probeRelaid;
}
