import { requireProbability } from './require-probability.ts';
import { sampleMean } from './sample-mean.ts';
import { sampleSd } from './sample-sd.ts';
import { studentTQuantile } from './student-t-quantile.ts';

export interface WelchInterval {
  /** Mean of the second sample less mean of the first. */
  readonly difference: number;
  readonly low: number;
  readonly high: number;
  readonly standardError: number;
  readonly degreesOfFreedom: number;
}

/**
 * Two-sided interval of the difference of two means, spreads not taken as equal (Welch): standard error
 * √(s₁²/n₁ + s₂²/n₂), degrees of freedom after Welch and Satterthwaite, not rounded. Needs two values a side.
 * Source: NIST/SEMATECH e-Handbook, section 1.3.5.3.
 */
export function welchInterval(
  first: readonly number[],
  second: readonly number[],
  confidence = 0.95,
): WelchInterval {
  requireProbability(confidence, 'interval of the difference');
  const firstVariance = sampleSd(first) ** 2 / first.length;
  const secondVariance = sampleSd(second) ** 2 / second.length;
  const standardError = Math.sqrt(firstVariance + secondVariance);
  const spreadOfVariance =
    firstVariance ** 2 / (first.length - 1) + secondVariance ** 2 / (second.length - 1);
  const degreesOfFreedom =
    spreadOfVariance === 0 ? first.length + second.length - 2 : standardError ** 4 / spreadOfVariance;
  const difference = sampleMean(second) - sampleMean(first);
  const halfWidth = studentTQuantile((1 + confidence) / 2, degreesOfFreedom) * standardError;
  return {
    difference,
    low: difference - halfWidth,
    high: difference + halfWidth,
    standardError,
    degreesOfFreedom,
  };
}
