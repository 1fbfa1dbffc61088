import { requireProbability } from './require-probability.ts';
import { studentTQuantile } from './student-t-quantile.ts';

/**
 * Two-sided prediction interval for one further value from mean, standard deviation and number of values:
 * mean ± t((1 + confidence)/2, n − 1)·s·√(1 + 1/n). Needs two values.
 * Source: Hahn and Meeker, Statistical Intervals (1991); NIST Dataplot, PREDICTION LIMITS.
 */
export function nextValueInterval(
  { values, mean, sd }: { readonly values: number; readonly mean: number; readonly sd: number },
  confidence = 0.95,
): readonly [number, number] {
  requireProbability(confidence, 'prediction interval');
  const halfWidth = studentTQuantile((1 + confidence) / 2, values - 1) * sd * Math.sqrt(1 + 1 / values);
  return [mean - halfWidth, mean + halfWidth];
}
