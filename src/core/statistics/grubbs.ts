import { requireFinite } from './require-finite.ts';
import { requireProbability } from './require-probability.ts';
import { sampleMean } from './sample-mean.ts';
import { sampleSd } from './sample-sd.ts';
import { studentTQuantile } from './student-t-quantile.ts';

export interface GrubbsResult {
  /** Place of the value farthest out, from 0. */
  readonly index: number;
  /** Distance from the mean in sample deviations. */
  readonly g: number;
  readonly critical: number;
  /** True when the value lies farther out than chance allows. */
  readonly flagged: boolean;
}

/**
 * Grubbs' test for one outlier among values of a normal distribution. G = largest |x − mean| ÷ s, critical
 * (n − 1)/√n · √(t²/(n − 2 + t²)) with t at 1 − α/(2n) (either side) or 1 − α/n (one side), n − 2 degrees of
 * freedom. Needs three values. Values that are all equal have no outlier.
 * Source: NIST/SEMATECH e-Handbook, section 1.3.5.17.1.
 */
export function grubbs(
  values: readonly number[],
  {
    side = 'either',
    significance = 0.05,
  }: { side?: 'either' | 'highest' | 'lowest'; significance?: number } = {},
): GrubbsResult {
  requireFinite(values, 3, 'Grubbs test');
  requireProbability(significance, 'Grubbs test (significance)');
  const n = values.length;
  const mean = sampleMean(values);
  const sd = sampleSd(values);
  const outness = values.map((value) => {
    if (side === 'either') return Math.abs(value - mean);
    return side === 'highest' ? value - mean : mean - value;
  });
  const index = outness.indexOf(Math.max(...outness));
  const g = sd === 0 ? 0 : (outness[index] ?? 0) / sd;
  const t = studentTQuantile(1 - significance / (side === 'either' ? 2 * n : n), n - 2);
  const critical = ((n - 1) / Math.sqrt(n)) * Math.sqrt(t ** 2 / (n - 2 + t ** 2));
  return { index, g, critical, flagged: g > critical };
}
