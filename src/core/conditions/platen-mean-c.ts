import type { RunResult } from '../run/RunResult.ts';

/** Mean of the platens at closing, °C; of one where only one is measured; null where none is. */
export function platenMeanC({
  platenAtClosingC: { upper, lower },
}: Pick<RunResult, 'platenAtClosingC'>): number | null {
  if (upper === null || lower === null) return upper ?? lower;
  return (upper + lower) / 2;
}
