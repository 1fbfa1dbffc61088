import type { Samples } from '../run/collect-samples.ts';
import { median } from '../run/median.ts';

/** A reading this far from the middle of its five neighbours is a spike, °C; more where readings lie far apart. Judgement, no source. */
const SPIKE_C = 3;
/** No platen moves faster than this, °C/s. */
const FASTEST_C_PER_S = 1;

/**
 * Leaves out readings that stand more than 3 °C, and 1 °C for each second between readings, off the median of five in a row (itself in the middle): a heated
 * platen cannot jump, wires and switching heaters can.
 */
export function withoutSpikes({ timesS, valuesC }: Samples): {
  readonly samples: Samples;
  readonly spikes: number;
} {
  const count = valuesC.length;
  const keptTimesS = new Float64Array(count);
  const keptC = new Float64Array(count);
  let kept = 0;
  const intervalS = count < 2 ? 0 : (timesS[count - 1]! - timesS[0]!) / (count - 1);
  const allowedC = SPIKE_C + FASTEST_C_PER_S * intervalS;
  for (let i = 0; i < count; i++) {
    const from = Math.max(0, Math.min(i - 2, count - 5));
    const middleC = median(valuesC.subarray(from, from + 5))!;
    if (count >= 5 && Math.abs(valuesC[i]! - middleC) > allowedC && !isSteep(valuesC, i)) continue;
    keptTimesS[kept] = timesS[i]!;
    keptC[kept++] = valuesC[i]!;
  }
  return {
    samples: { timesS: keptTimesS.subarray(0, kept), valuesC: keptC.subarray(0, kept) },
    spikes: count - kept,
  };
}

/** At an end of the record the window is one-sided: a steady climb is no spike. */
function isSteep(valuesC: Float64Array, i: number): boolean {
  const last = valuesC.length - 1;
  if (i > 1 && i < last - 1) return false;
  const [a, b] = i <= 1 ? [1, 2] : [-1, -2];
  const near = valuesC[i + a]! - valuesC[i]!;
  const far = valuesC[i + b]! - valuesC[i + a]!;
  return Math.abs(near - far) < SPIKE_C;
}
