import type { TrialRun } from '../trial/TrialResult.ts';
import { platenMeanC } from './platen-mean-c.ts';
import type { ReferenceConditions } from './ReferenceSoak.ts';

/**
 * Reference of a trial: what the user states, else the median over its runs that are good or taken in (one odd run does
 * not move it). Start and mean platen temperature at closing, °C.
 */
export function referenceConditions(
  runs: readonly TrialRun[],
  stated: Partial<ReferenceConditions> = {},
): ReferenceConditions {
  const usable = runs.filter(
    ({ result, decision }) =>
      decision.kind === 'taken-in' || (decision.kind === 'automatic' && result.verdict === 'good'),
  );
  return {
    startC: stated.startC ?? median(usable.flatMap(({ result }) => result.startC ?? [])),
    platenC: stated.platenC ?? median(usable.flatMap(({ result }) => platenMeanC(result) ?? [])),
  };
}

function median(values: readonly number[]): number | null {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle];
  if (upper === undefined) return null;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] ?? upper)) / 2;
}
