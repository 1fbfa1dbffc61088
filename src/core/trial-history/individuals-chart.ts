import { requireFinite } from '../statistics/require-finite.ts';
import { sampleMean } from '../statistics/sample-mean.ts';
import { chartSignals } from './chart-signals.ts';
import type { IndividualsChart, TrialPoint } from './IndividualsChart.ts';

/** Mean range of two values of a normal distribution in deviations. NIST/SEMATECH e-Handbook, 6.3.2.2. */
const D2 = 1.128;
/** Upper limit of a range of two in mean ranges. Same source, D4 for two values. */
const D4 = 3.267;
/** Fewer points make provisional limits. Common practice; the handbook asks for 20 to 25 subgroups. */
export const POINTS_FOR_FIRM_LIMITS = 20;

/**
 * Chart of one point a trial (its mean soak time, s) with moving range: centre = mean, sigma = mean moving
 * range ÷ 1.128, limits three sigma to each side. `from` points may be given as the base for the limits, so
 * that new points are judged by old limits. Needs two points. Source: NIST/SEMATECH e-Handbook, 6.3.2.2.
 */
export function individualsChart(
  points: readonly TrialPoint[],
  { basePoints = points.length }: { readonly basePoints?: number } = {},
): IndividualsChart {
  const values = points.map((point) => point.meanSoakS);
  const base = values.slice(0, basePoints);
  requireFinite(base, 2, 'history chart');
  requireFinite(values, 2, 'history chart');
  const movingRanges = values.map((value, index) =>
    index === 0 ? null : Math.abs(value - (values[index - 1] ?? value)),
  );
  const centreS = sampleMean(base);
  const meanMovingRangeS = sampleMean(movingRanges.slice(1, basePoints).flatMap((range) => range ?? []));
  const sigmaS = meanMovingRangeS / D2;
  const movingRangeLimitS = D4 * meanMovingRangeS;
  const signals = chartSignals(values, { centre: centreS, sigma: sigmaS });
  return Object.freeze({
    points: points.map((point, index) => {
      const movingRangeS = movingRanges[index] ?? null;
      const jump = movingRangeS !== null && movingRangeS > movingRangeLimitS ? (['jump'] as const) : [];
      return { ...point, movingRangeS, signals: [...(signals[index] ?? []), ...jump] };
    }),
    centreS,
    meanMovingRangeS,
    sigmaS,
    lowerLimitS: centreS - 3 * sigmaS,
    upperLimitS: centreS + 3 * sigmaS,
    movingRangeLimitS,
    provisional: base.length < POINTS_FOR_FIRM_LIMITS,
  });
}
