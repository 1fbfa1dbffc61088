import { studentTQuantile } from '../statistics/student-t-quantile.ts';
import type { TrialStatistics } from './TrialResult.ts';

/** Half-width of the mean's 95 % interval now and with one run more, s. */
export interface OneMoreRun {
  readonly runs: number;
  readonly halfWidthNowS: number;
  readonly halfWidthThenS: number;
}

/**
 * What one more run would buy if the spread stays as it is: t(0.975, n − 1)·s/√n now, t(0.975, n)·s/√(n + 1) then.
 * Null under two runs: nothing is known of the spread. Source: GUM (JCGM 100) G.3, mean of n values.
 */
export function oneMoreRun({ runs, sdSoakS }: Pick<TrialStatistics, 'runs' | 'sdSoakS'>): OneMoreRun | null {
  if (sdSoakS === null || runs < 2) return null;
  const halfWidth = (n: number) => (studentTQuantile(0.975, n - 1) * sdSoakS) / Math.sqrt(n);
  return { runs, halfWidthNowS: halfWidth(runs), halfWidthThenS: halfWidth(runs + 1) };
}
