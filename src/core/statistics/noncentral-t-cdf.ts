import distributions from './distributions.cjs';
import { StatisticsError } from './StatisticsError.ts';
import { studentTCdf } from './student-t-cdf.ts';

/**
 * Probability that a noncentral t variable (degrees of freedom, noncentrality) stays at or below `t`.
 * From jstat, which uses algorithm AS 243 (Lenth 1989, Applied Statistics 38, 185–189); it wants whole or
 * fractional degrees of freedom above 0.
 */
export function noncentralTCdf(t: number, degreesOfFreedom: number, noncentrality: number): number {
  if (!(Number.isFinite(t) && degreesOfFreedom > 0 && Number.isFinite(noncentrality))) {
    throw new StatisticsError(
      'option-out-of-range',
      `noncentral t needs finite numbers and degrees of freedom above 0, came ${t}, ${degreesOfFreedom}, ${noncentrality}`,
      'Make at least two runs',
    );
  }
  // The library's central case is good to 2e-8 only.
  if (noncentrality === 0) return studentTCdf(t, degreesOfFreedom);
  return distributions.noncentralTCdf(t, degreesOfFreedom, noncentrality);
}
