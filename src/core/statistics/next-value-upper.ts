import { requireProbability } from './require-probability.ts';
import { sampleMean } from './sample-mean.ts';
import { sampleSd } from './sample-sd.ts';
import { studentTQuantile } from './student-t-quantile.ts';

/**
 * One-sided upper prediction bound for one further value: mean + t(confidence, n − 1)·s·√(1 + 1/n).
 * Needs two values. Source: Hahn and Meeker, Statistical Intervals (1991); NIST Dataplot, PREDICTION LIMITS.
 */
export function nextValueUpper(values: readonly number[], confidence = 0.95): number {
  requireProbability(confidence, 'prediction bound');
  const spread = sampleSd(values) * Math.sqrt(1 + 1 / values.length);
  return sampleMean(values) + studentTQuantile(confidence, values.length - 1) * spread;
}
