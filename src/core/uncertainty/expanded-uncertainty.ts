import { studentTQuantile } from '../statistics/student-t-quantile.ts';
import { combinedStandardUncertaintyS } from './combined-standard-uncertainty.ts';
import { coverageFactor } from './coverage-factor.ts';
import { effectiveDegreesOfFreedom } from './effective-degrees-of-freedom.ts';
import { monteCarloInterval } from './monte-carlo-interval.ts';
import type { Expanded, UncertaintyPart } from './UncertaintyPart.ts';

export interface ExpandedOptions {
  readonly probability?: number;
  /** Of the Monte Carlo draws; the same seed gives the same figure. */
  readonly seed?: number;
  readonly draws?: number;
}

/**
 * Expanded uncertainty of independent parts that add up. Normally k·u with k by Student t of the effective
 * degrees of freedom (GUM, G.4); where one rectangular part outweighs all others together, by Monte Carlo
 * (JCGM 101), for k = 2 overstates there: a lone ±a holds 95 % within ±0.95 a, not ±1.15 a.
 */
export function expandedUncertainty(
  parts: readonly UncertaintyPart[],
  { probability = 0.95, seed = 1, draws = 100_000 }: ExpandedOptions = {},
): Expanded {
  const standardUncertaintyS = combinedStandardUncertaintyS(parts);
  const degreesOfFreedom = effectiveDegreesOfFreedom(parts);
  const common = { probability, standardUncertaintyS, effectiveDegreesOfFreedom: degreesOfFreedom };
  if (!rectangularDominates(parts)) {
    const k = coverageFactor(probability, degreesOfFreedom);
    const oneSided = studentTQuantile(probability, Math.max(1, Math.floor(degreesOfFreedom)));
    return {
      ...common,
      method: 'student',
      coverageFactor: k,
      expandedUncertaintyS: k * standardUncertaintyS,
      upperS: oneSided * standardUncertaintyS,
    };
  }
  const { halfWidthS, upperS } = dominatedInterval(parts, { probability, seed, draws });
  return {
    ...common,
    method: 'monte-carlo',
    coverageFactor: halfWidthS / standardUncertaintyS,
    expandedUncertaintyS: halfWidthS,
    upperS,
  };
}

/** True when one rectangular part is larger than all the others together. */
export function rectangularDominates(parts: readonly UncertaintyPart[]): boolean {
  return parts.some((part) => {
    if (part.shape !== 'rectangular') return false;
    const others = Math.hypot(
      ...parts.filter((other) => other !== part).map((one) => one.standardUncertaintyS),
    );
    return part.standardUncertaintyS > others;
  });
}

function dominatedInterval(parts: readonly UncertaintyPart[], options: Required<ExpandedOptions>) {
  const { probability } = options;
  const [only] = parts;
  if (parts.length === 1 && only !== undefined) {
    // Alone it needs no drawing: ±p·a two-sided, (2p − 1)·a one-sided.
    const limitS = only.standardUncertaintyS * Math.sqrt(3);
    return { halfWidthS: probability * limitS, upperS: (2 * probability - 1) * limitS };
  }
  return monteCarloInterval(parts, options);
}
