import type { Samples } from '../run/collect-samples.ts';
import type { WithUncertainty } from './WarmUp.ts';

/** Blocks whose means count as independent: longer than a heater's cycle in any stretch of some minutes. */
const BLOCKS = 12;

/**
 * Drift, °C/h: slope of the straight line by least squares through the means of twelve equal blocks, with its standard
 * uncertainty from the blocks' scatter about the line. Null under 24 readings.
 */
export function straightDrift({ timesS, valuesC }: Samples): WithUncertainty | null {
  const count = timesS.length;
  if (count < 2 * BLOCKS) return null;
  const x: number[] = [];
  const y: number[] = [];
  for (let block = 0; block < BLOCKS; block++) {
    const from = Math.floor((block * count) / BLOCKS);
    const to = Math.floor(((block + 1) * count) / BLOCKS);
    x.push(mean(timesS.subarray(from, to)) / 3600);
    y.push(mean(valuesC.subarray(from, to)));
  }
  const middleX = mean(x);
  const middleY = mean(y);
  let xx = 0;
  let xy = 0;
  for (let i = 0; i < BLOCKS; i++) {
    xx += (x[i]! - middleX) ** 2;
    xy += (x[i]! - middleX) * (y[i]! - middleY);
  }
  if (!(xx > 0)) return null;
  const slope = xy / xx;
  let left = 0;
  for (let i = 0; i < BLOCKS; i++) left += (y[i]! - middleY - slope * (x[i]! - middleX)) ** 2;
  return { value: slope, standardUncertainty: Math.sqrt(left / (BLOCKS - 2) / xx) };
}

export function mean(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum / values.length;
}
