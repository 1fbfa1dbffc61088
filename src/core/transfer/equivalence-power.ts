import { normalCdf } from '../statistics/normal-cdf.ts';
import { StatisticsError } from '../statistics/StatisticsError.ts';
import { studentTQuantile } from '../statistics/student-t-quantile.ts';
import { LEAST_RUNS_A_SIDE } from './EquivalencePlan.ts';

const STEPS = 120;
/** Deviations beyond this many true ones do not happen at three runs or more. */
const WIDEST = 6;

/**
 * Chance that two presses that are truly alike will be shown to be so, with `runsEach` runs on each and
 * margins of ±`marginInSd` times the run-to-run deviation: the power of `equivalence`, to print before starting.
 * Exact for normal runs of equal spread, by numerical integration over the sample spread (χ² of both) and its
 * split between the presses (beta), which sets Welch's degrees of freedom. Example: (3, 2) → 0.31.
 */
export function equivalencePower(runsEach: number, marginInSd: number): number {
  if (!(Number.isInteger(runsEach) && runsEach >= LEAST_RUNS_A_SIDE && marginInSd > 0)) {
    throw new StatisticsError(
      'option-out-of-range',
      `power requires ${LEAST_RUNS_A_SIDE} runs or more on each press and a margin above 0, came ${runsEach} and ${marginInSd}`,
      'Plan at least three runs on each press',
    );
  }
  const half = (runsEach - 1) / 2;
  const splitDensity = (share: number) => (share * (1 - share)) ** (half - 1);
  const givenSplit = (share: number) => {
    const degreesOfFreedom = (runsEach - 1) / (share ** 2 + (1 - share) ** 2);
    return powerAt(studentTQuantile(0.95, degreesOfFreedom), runsEach, marginInSd);
  };
  return simpson((share) => givenSplit(share) * splitDensity(share), 0, 0.5) / simpson(splitDensity, 0, 0.5);
}

/** Chance that |difference| + t·s·√(2/n) stays inside the margin, over the distribution of s; σ = 1. */
function powerAt(t: number, runsEach: number, margin: number): number {
  const standardError = Math.sqrt(2 / runsEach);
  const degreesOfFreedom = 2 * (runsEach - 1);
  // Of x = s/σ; the logarithm keeps many runs from underflow.
  const density = (x: number) =>
    Math.exp((degreesOfFreedom - 1) * Math.log(x) - (degreesOfFreedom * (x ** 2 - 1)) / 2);
  const chance = (x: number) => 2 * normalCdf((margin - t * x * standardError) / standardError) - 1;
  const widest = Math.min(WIDEST, margin / (t * standardError));
  return (
    simpson((x) => (x === 0 ? 0 : chance(x) * density(x)), 0, widest) /
    simpson((x) => (x === 0 ? 0 : density(x)), 0, WIDEST)
  );
}

/** Integral by Simpson's rule. */
function simpson(of: (x: number) => number, from: number, to: number): number {
  const width = (to - from) / STEPS;
  let sum = of(from) + of(to);
  for (let step = 1; step < STEPS; step += 1) sum += of(from + step * width) * (step % 2 === 1 ? 4 : 2);
  return (sum * width) / 3;
}
