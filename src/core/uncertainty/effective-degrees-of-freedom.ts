import { combinedStandardUncertaintyS } from './combined-standard-uncertainty.ts';
import type { UncertaintyPart } from './UncertaintyPart.ts';

type Part = Pick<UncertaintyPart, 'standardUncertaintyS' | 'degreesOfFreedom'>;

/**
 * Effective degrees of freedom after Welch and Satterthwaite: u⁴ ÷ Σ(uᵢ⁴/νᵢ); Infinity when every part's are
 * infinite or nothing is uncertain. Source: JCGM 100 (GUM), G.4.1.
 */
export function effectiveDegreesOfFreedom(parts: readonly Part[]): number {
  const combined = combinedStandardUncertaintyS(parts);
  const sum = parts.reduce(
    (total, part) => total + part.standardUncertaintyS ** 4 / part.degreesOfFreedom,
    0,
  );
  return sum === 0 ? Number.POSITIVE_INFINITY : combined ** 4 / sum;
}
