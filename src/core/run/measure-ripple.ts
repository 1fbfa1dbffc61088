import type { Samples } from './collect-samples.ts';
import { median } from './median.ts';

/** A shorter record is still steep in its latter half, s. Judgement, no source. */
const LEAST_SPAN_S = 40;

/**
 * Scatter about the moving mean of ± 2.5 s over the latter half of the readings (where the curve is flat), as
 * 1.4826 · median absolute deviation, °C. Null under 50 readings, under 40 s or with fewer than 11 in the window.
 */
export function ripple({ timesS, valuesC }: Samples): number | null {
  const count = timesS.length;
  if (count < 50 || timesS[count - 1]! - timesS[0]! < LEAST_SPAN_S) return null;
  const offsets: number[] = [];
  let from = 0;
  let to = 0;
  let sum = 0;
  for (let i = 0; i < count; i++) {
    while (to < count && timesS[to]! <= timesS[i]! + 2.5) sum += valuesC[to++]!;
    while (timesS[from]! < timesS[i]! - 2.5) sum -= valuesC[from++]!;
    if (i < count / 2 || to - from < 11 || timesS[count - 1]! < timesS[i]! + 2.5) continue;
    offsets.push(Math.abs(valuesC[i]! - sum / (to - from)));
  }
  return offsets.length < 20 ? null : 1.4826 * median(offsets)!;
}
