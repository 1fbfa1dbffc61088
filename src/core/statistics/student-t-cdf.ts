import distributions from './distributions.cjs';
import { StatisticsError } from './StatisticsError.ts';

/** Probability that a Student t variable stays at or below `t`. Refuses NaN and degrees of freedom of 0 or less. */
export function studentTCdf(t: number, degreesOfFreedom: number): number {
  if (Number.isNaN(t) || !(degreesOfFreedom > 0)) {
    throw new StatisticsError(
      'option-out-of-range',
      `Student t needs a number and degrees of freedom above 0, came ${t} and ${degreesOfFreedom}`,
      'Make at least two runs',
    );
  }
  return distributions.studentTCdf(t, degreesOfFreedom);
}
