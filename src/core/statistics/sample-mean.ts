import { mean } from 'simple-statistics';
import { requireFinite } from './require-finite.ts';

/** Mean of one or more values (compensated sum). 15 digits on all eight NIST StRD univariate sets. */
export function sampleMean(values: readonly number[]): number {
  requireFinite(values, 1, 'mean');
  return mean([...values]);
}
