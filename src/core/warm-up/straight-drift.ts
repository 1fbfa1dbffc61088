import type { Samples } from '../run/collect-samples.ts';
import type { WithUncertainty } from './WarmUp.ts';

/** Blocks whose means count as independent: longer than a heater's cycle in any stretch of some minutes. */
const MOST_BLOCKS = 12;
const LEAST_READINGS = 8;

/**
 * Drift, °C/h: slope of the straight line by least squares through the means of twelve equal blocks (the readings
 * themselves where there are under 24), with its standard uncertainty from their scatter about the line. Null under eight.
 */
export function straightDrift({ timesS, valuesC }: Samples): WithUncertainty | null {
  const count = timesS.length;
  if (count < LEAST_READINGS) return null;
  const blocks = count < 2 * MOST_BLOCKS ? count : MOST_BLOCKS;
  const x: number[] = [];
  const y: number[] = [];
  for (let block = 0; block < blocks; block++) {
    const from = Math.floor((block * count) / blocks);
    const to = Math.floor(((block + 1) * count) / blocks);
    x.push(mean(timesS.subarray(from, to)) / 3600);
    y.push(mean(valuesC.subarray(from, to)));
  }
  const middleX = mean(x);
  const middleY = mean(y);
  let xx = 0;
  let xy = 0;
  for (let i = 0; i < blocks; i++) {
    xx += (x[i]! - middleX) ** 2;
    xy += (x[i]! - middleX) * (y[i]! - middleY);
  }
  if (!(xx > 0)) return null;
  const slope = xy / xx;
  let left = 0;
  for (let i = 0; i < blocks; i++) left += (y[i]! - middleY - slope * (x[i]! - middleX)) ** 2;
  return { value: slope, standardUncertainty: Math.sqrt(left / (blocks - 2) / xx) };
}

export function mean(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum / values.length;
}
