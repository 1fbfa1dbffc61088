import { sampleStandardDeviation } from 'simple-statistics';
import { requireFinite } from './require-finite.ts';

/**
 * Standard deviation of a sample: √(Σ(x − mean)² ÷ (n − 1)), two passes. Needs two values.
 * NIST StRD: 13 digits or more, 9 on NumAcc3 and 8 on NumAcc4, where the data as doubles hold no more.
 */
export function sampleSd(values: readonly number[]): number {
  requireFinite(values, 2, 'standard deviation');
  return sampleStandardDeviation([...values]);
}
