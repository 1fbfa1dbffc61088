import { medianInPlace } from './median.ts';

/** With fewer readings every pair is taken. */
const FEW = 12;

/**
 * Weight 0 for readings far off a median straight line, else 1. The slope is the median over pairs half the record apart
 * (Theil's incomplete method, 1950; from memory), over all pairs where there are few readings.
 */
export function startWeights(timesS: Float64Array, valuesC: Float64Array, floorC: number): Float64Array {
  const count = timesS.length;
  const slope = count < FEW ? slopeOfAllPairs(timesS, valuesC) : slopeOfHalves(timesS, valuesC);
  const offsets = new Float64Array(count);
  for (let i = 0; i < count; i++) offsets[i] = valuesC[i]! - slope * timesS[i]!;
  const level = medianInPlace(offsets.slice());
  const sizes = new Float64Array(count);
  for (let i = 0; i < count; i++) sizes[i] = Math.abs(offsets[i]! - level);
  const limitC = 6 * Math.max(1.4826 * medianInPlace(sizes), floorC);
  const weights = offsets;
  for (let i = 0; i < count; i++) weights[i] = Math.abs(offsets[i]! - level) <= limitC ? 1 : 0;
  return weights;
}

function slopeOfHalves(timesS: Float64Array, valuesC: Float64Array): number {
  const half = timesS.length >>> 1;
  const slopes = new Float64Array(half);
  let pairs = 0;
  for (let i = 0; i < half; i++) {
    const dt = timesS[i + half]! - timesS[i]!;
    if (dt > 0) slopes[pairs++] = (valuesC[i + half]! - valuesC[i]!) / dt;
  }
  return pairs === 0 ? 0 : medianInPlace(slopes.subarray(0, pairs));
}

function slopeOfAllPairs(timesS: Float64Array, valuesC: Float64Array): number {
  const slopes: number[] = [];
  for (let i = 0; i < timesS.length; i++)
    for (let j = i + 1; j < timesS.length; j++) {
      const dt = timesS[j]! - timesS[i]!;
      if (dt > 0) slopes.push((valuesC[j]! - valuesC[i]!) / dt);
    }
  return slopes.length === 0 ? 0 : medianInPlace(Float64Array.from(slopes));
}
