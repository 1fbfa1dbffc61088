import { requireProbability } from './require-probability.ts';
import { sampleMean } from './sample-mean.ts';
import { sampleSd } from './sample-sd.ts';
import { studentTQuantile } from './student-t-quantile.ts';

/**
 * Two-sided confidence interval of the mean: mean ± t((1 + confidence)/2, n − 1)·s/√n. Unit of the values.
 * Needs two values. Source: NIST/SEMATECH e-Handbook, section 1.3.5.2.
 */
export function meanInterval(values: readonly number[], confidence = 0.95): readonly [number, number] {
  requireProbability(confidence, 'confidence interval of the mean');
  const mean = sampleMean(values);
  const halfWidth =
    (studentTQuantile((1 + confidence) / 2, values.length - 1) * sampleSd(values)) / Math.sqrt(values.length);
  return [mean - halfWidth, mean + halfWidth];
}
