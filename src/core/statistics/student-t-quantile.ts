import distributions from './distributions.cjs';
import { normalQuantile } from './normal-quantile.ts';
import { requireProbability } from './require-probability.ts';
import { StatisticsError } from './StatisticsError.ts';

/** Above this many degrees of freedom Student t is the normal distribution for our digits. */
const MANY = 1e9;

/**
 * Student t quantile for `degreesOfFreedom` (may be a fraction; Infinity gives the normal quantile).
 * Example: (0.975, 2) → 4.303. Proved against the NIST/SEMATECH e-Handbook table 1.3.6.7.2 and GUM table G.2.
 */
export function studentTQuantile(probability: number, degreesOfFreedom: number): number {
  requireProbability(probability, 'Student t quantile');
  if (!(degreesOfFreedom > 0)) {
    throw new StatisticsError(
      'too-few-values',
      `Student t quantile requires degrees of freedom above 0, came ${degreesOfFreedom}`,
      'Make at least two runs',
    );
  }
  // The library gives NaN for Infinity; far out the two agree to 1e-9 (tested).
  if (degreesOfFreedom > MANY) return normalQuantile(probability);
  return distributions.studentT(probability, degreesOfFreedom);
}
