import { studentTQuantile } from '../statistics/student-t-quantile.ts';
import type { TrialStatistics } from './TrialResult.ts';

/** What a number of runs tells, in s, at the spread seen so far. */
export interface RunsTell {
  readonly runs: number;
  /** Half-width of the mean's 95 % interval. */
  readonly meanHalfWidthS: number;
  /** One-sided 95 % prediction bound above the mean. */
  readonly nextRunAboveMeanS: number;
}

/**
 * With two or three runs: what they tell, and what a fourth and a fifth would, if the spread stays as it is.
 * t(0.975, n − 1)·s/√n and t(0.95, n − 1)·s·√(1 + 1/n). Null with one run or with more than three.
 */
export function fewRuns({
  runs,
  sdSoakS,
}: TrialStatistics): { now: RunsTell; later: readonly RunsTell[] } | null {
  if (sdSoakS === null || runs < 2 || runs > 3) return null;
  const tell = (n: number): RunsTell => ({
    runs: n,
    meanHalfWidthS: (studentTQuantile(0.975, n - 1) * sdSoakS) / Math.sqrt(n),
    nextRunAboveMeanS: studentTQuantile(0.95, n - 1) * sdSoakS * Math.sqrt(1 + 1 / n),
  });
  return { now: tell(runs), later: [tell(4), tell(5)] };
}
