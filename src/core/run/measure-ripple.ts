import type { Samples } from './collect-samples.ts';
import { medianInPlace } from './median.ts';

/** A shorter record is still steep in its latter half, s. Judgement, no source. */
const LEAST_SPAN_S = 40;
const HALF_WINDOW_S = 2.5;

/**
 * Scatter about the moving mean of ± 2.5 s over the latter half of the readings (where the curve is flat), as
 * 1.4826 · median absolute deviation, °C. Null under 50 readings, under 40 s or with fewer than 11 in the window.
 */
export function ripple({ timesS, valuesC }: Samples): number | null {
  const count = timesS.length;
  if (count < 50 || timesS[count - 1]! - timesS[0]! < LEAST_SPAN_S) return null;
  // The window of the first reading looked at.
  const first = Math.ceil(count / 2);
  const offsets = new Float64Array(count - first);
  let found = 0;
  let from = first;
  while (from > 0 && timesS[from - 1]! >= timesS[first]! - HALF_WINDOW_S) from--;
  let to = from;
  let sum = 0;
  const lastS = timesS[count - 1]! - HALF_WINDOW_S;
  for (let i = first; i < count && timesS[i]! <= lastS; i++) {
    while (to < count && timesS[to]! <= timesS[i]! + HALF_WINDOW_S) sum += valuesC[to++]!;
    while (timesS[from]! < timesS[i]! - HALF_WINDOW_S) sum -= valuesC[from++]!;
    if (to - from >= 11) offsets[found++] = Math.abs(valuesC[i]! - sum / (to - from));
  }
  return found < 20 ? null : 1.4826 * medianInPlace(offsets.subarray(0, found));
}
