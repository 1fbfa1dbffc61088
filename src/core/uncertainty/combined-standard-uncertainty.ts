import { requireFinite } from '../statistics/require-finite.ts';
import type { UncertaintyPart } from './UncertaintyPart.ts';

type Part = Pick<UncertaintyPart, 'standardUncertaintyS'>;

/** Root of the sum of squares of independent parts, in their unit. Source: JCGM 100 (GUM), 5.1.2. */
export function combinedStandardUncertaintyS(parts: readonly Part[]): number {
  requireFinite(
    parts.map((part) => part.standardUncertaintyS),
    1,
    'combined uncertainty',
  );
  return Math.hypot(...parts.map((part) => part.standardUncertaintyS));
}
