import type { RunResult } from '../run/RunResult.ts';
import type { TrialRun } from '../trial/TrialResult.ts';
import type { ReferenceConditions, ReferenceSoak } from './ReferenceSoak.ts';
import { referenceConditions } from './reference-conditions.ts';
import { referenceSoak } from './reference-soak.ts';

export interface RunsOnReference {
  readonly reference: ReferenceConditions;
  /** Runs in the order given; one beyond the limit is suspect with the reason 'off-reference'. */
  readonly runs: readonly TrialRun[];
  /** By position; null where a run cannot be put on the reference. */
  readonly soaks: readonly (ReferenceSoak | null)[];
}

/**
 * Puts a trial's runs on its reference conditions. Raw soak times stay as they are; a run whose soak time would move
 * by more than the limit was made under other conditions, and a good one becomes suspect with that reason.
 */
export function onReference(
  runs: readonly TrialRun[],
  targetC: number,
  stated: Partial<ReferenceConditions> = {},
): RunsOnReference {
  const reference = referenceConditions(runs, stated);
  const soaks = runs.map(({ result }) => referenceSoak(result, targetC, reference));
  return {
    reference,
    soaks,
    runs: runs.map((run, at) => {
      const soak = soaks[at] ?? null;
      return soak === null || !soak.beyondLimit ? run : { ...run, result: suspect(run.result, soak) };
    }),
  };
}

function suspect(result: RunResult, soak: ReferenceSoak): RunResult {
  if (result.reasons.some(({ code }) => code === 'off-reference')) return result;
  const { shiftS, limitS, startDifferenceC, platenDifferenceC } = soak;
  const way = shiftS > 0 ? 'longer' : 'shorter';
  const grave = result.reasons.filter(({ severity }) => severity !== 'note');
  const notes = result.reasons.filter(({ severity }) => severity === 'note');
  return {
    ...result,
    verdict: result.verdict === 'unusable' ? 'unusable' : 'suspect',
    reasons: [
      ...grave,
      {
        code: 'off-reference',
        severity: 'suspect',
        facts: { shiftS: Math.abs(shiftS), way, limitS, startDifferenceC, platenDifferenceC },
      },
      ...notes,
    ],
  };
}
