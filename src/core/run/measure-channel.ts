import type { Samples } from './collect-samples.ts';
import { medianInPlace } from './median.ts';

export interface Scatter {
  /** Standard deviation of a reading, spikes left out, °C. */
  readonly noiseC: number;
  /** Lone readings far off their neighbours. */
  readonly spikes: number;
}

/** Scatter about the mean of both neighbours, MAD · 1.4826/√1.5, at least q/√12; and the count of lone spikes. */
export function scatter({ valuesC }: Samples, resolutionC: number): Scatter {
  const count = Math.max(0, valuesC.length - 2);
  const offsets = new Float64Array(count);
  let largest = 0;
  for (let i = 0; i < count; i++) {
    const offset = Math.abs(valuesC[i + 1]! - (valuesC[i]! + valuesC[i + 2]!) / 2);
    offsets[i] = offset;
    if (offset > largest) largest = offset;
  }
  const floorC = resolutionC / Math.sqrt(12);
  const middle = count === 0 ? 0 : medianInPlace(offsets.slice());
  const noiseC = Math.max((1.4826 * middle) / Math.sqrt(1.5), floorC);
  const limitC = Math.max(8 * noiseC, 4 * resolutionC, 4);
  let spikes = 0;
  if (largest > limitC)
    for (let i = 0; i < count; i++) {
      const offset = offsets[i]!;
      if (offset > limitC && Math.abs(valuesC[i + 2]! - valuesC[i]!) < offset / 2) spikes++;
    }
  return { noiseC, spikes };
}

/** Highest and lowest of medians of three neighbours, so that a lone spike is neither; null of nothing. */
export function extremes({ valuesC }: Samples): {
  readonly lowestC: number | null;
  readonly peakC: number | null;
} {
  const count = valuesC.length;
  if (count === 0) return { lowestC: null, peakC: null };
  if (count < 3) return { lowestC: Math.min(...valuesC), peakC: Math.max(...valuesC) };
  let lowestC = Number.POSITIVE_INFINITY;
  let peakC = Number.NEGATIVE_INFINITY;
  for (let i = 2; i < count; i++) {
    const a = valuesC[i - 2]!;
    const b = valuesC[i - 1]!;
    const c = valuesC[i]!;
    const [low, high] = a < b ? [a, b] : [b, a];
    const middle = c < low ? low : Math.min(c, high);
    if (middle < lowestC) lowestC = middle;
    if (middle > peakC) peakC = middle;
  }
  return { lowestC, peakC };
}
