import distributions from './distributions.cjs';
import { requireProbability } from './require-probability.ts';

/** Quantile of the standard normal distribution. Example: 0.975 → 1.95996. */
export function normalQuantile(probability: number): number {
  requireProbability(probability, 'normal quantile');
  return distributions.normal(probability);
}
