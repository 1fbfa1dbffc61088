import { StatisticsError } from '../statistics/StatisticsError.ts';
import { sampleSd } from '../statistics/sample-sd.ts';
import { smallestCount } from '../statistics/smallest-count.ts';
import { studentTQuantile } from '../statistics/student-t-quantile.ts';
import { welchInterval } from '../statistics/welch-interval.ts';
import { type Equivalence, type EquivalencePlan, LEAST_RUNS_A_SIDE } from './EquivalencePlan.ts';

const MOST_RUNS = 200;

/**
 * Do two presses heat the same bond line alike, within margins stated beforehand? Two one-sided tests at 5 %
 * each, which is a 90 % interval (Welch) inside both margins. Soak times in s. With the same probe and reader
 * their error cancels; with different ones `probePartS` (one-sided 95 % of both together) widens each end.
 * Different: the interval lies wholly beyond a margin. Under three runs a side no claim is made.
 * Source: Schuirmann (1987), J. Pharmacokin. Biopharm. 15, 657–680 (from memory); interval as in
 * NIST/SEMATECH e-Handbook, section 1.3.5.3.
 */
export function equivalence(input: {
  readonly firstSoakTimesS: readonly number[];
  readonly secondSoakTimesS: readonly number[];
  readonly plan: EquivalencePlan;
  readonly probePartS?: number;
}): Equivalence {
  const { firstSoakTimesS, secondSoakTimesS, plan, probePartS = 0 } = input;
  requireMargins(plan, probePartS);
  const runsFirst = firstSoakTimesS.length;
  const runsSecond = secondSoakTimesS.length;
  if (Math.min(runsFirst, runsSecond) < LEAST_RUNS_A_SIDE)
    return { kind: 'too-few-runs', runsFirst, runsSecond };
  const { difference, low, high } = welchInterval(firstSoakTimesS, secondSoakTimesS, 0.9);
  const lowS = low - probePartS;
  const highS = high + probePartS;
  const figures = { differenceS: difference, lowS, highS, plan, probePartS, runsFirst, runsSecond };
  if (lowS > -plan.fasterS && highS < plan.slowerS) return { kind: 'shown', ...figures };
  if (lowS > plan.slowerS || highS < -plan.fasterS) return { kind: 'different', ...figures };
  return { kind: 'not-shown', ...figures, moreRunsEach: moreRunsEach(input, difference) };
}

/** Smallest number of further runs on each press that brings the interval inside, at this difference and spread. */
function moreRunsEach(
  { firstSoakTimesS, secondSoakTimesS, plan, probePartS = 0 }: Parameters<typeof equivalence>[0],
  differenceS: number,
): number | null {
  const room = Math.min(plan.slowerS - differenceS, plan.fasterS + differenceS) - probePartS;
  const firstVariance = sampleSd(firstSoakTimesS) ** 2;
  const secondVariance = sampleSd(secondSoakTimesS) ** 2;
  if (room <= 0) return null;
  return smallestCount(1, MOST_RUNS, (more) => {
    const a = firstVariance / (firstSoakTimesS.length + more);
    const b = secondVariance / (secondSoakTimesS.length + more);
    const spread =
      a ** 2 / (firstSoakTimesS.length + more - 1) + b ** 2 / (secondSoakTimesS.length + more - 1);
    const degreesOfFreedom = spread === 0 ? 2 : (a + b) ** 2 / spread;
    return studentTQuantile(0.95, degreesOfFreedom) * Math.sqrt(a + b) < room;
  });
}

function requireMargins({ slowerS, fasterS }: EquivalencePlan, probePartS: number): void {
  if (slowerS > 0 && fasterS > 0 && Number.isFinite(slowerS + fasterS) && probePartS >= 0) return;
  throw new StatisticsError(
    'option-out-of-range',
    `margins for slower and faster must be above 0 s, came ${slowerS} and ${fasterS}, probe part ${probePartS}`,
    'State how much slower and how much faster the second press may be, before its runs are shown',
  );
}
