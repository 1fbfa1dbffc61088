import cdf from '@stdlib/stats-base-dists-normal-cdf';
import { StatisticsError } from './StatisticsError.ts';

/** Probability that a standard normal variable stays at or below `z`. Example: 1.644854 → 0.95. */
export function normalCdf(z: number): number {
  if (!Number.isNaN(z)) return cdf(z, 0, 1);
  throw new StatisticsError(
    'value-not-finite',
    'normal distribution requires a number, came NaN',
    'Leave out missing values',
  );
}
