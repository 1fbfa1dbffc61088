import { LIMITS } from '../limits.ts';
import type { Gap } from '../RunFacts.ts';
import type { Crossing } from '../RunResult.ts';
import type { RunCheck } from './RunCheck.ts';

/**
 * Readings are missing where the bond line crossed. Over 5 s, or when the crossing is then known worse than 0.5 s: unusable;
 * shorter: suspect, with the uncertainty as wide as the readings left allow. Limits are judgement, no source.
 */
export const gapAtCrossing: RunCheck = (facts) => {
  const { crossing, gaps } = facts;
  if (crossing === null) return null;
  const over = gaps.find((gap) => gap.fromS <= crossing.timeS && gap.toS >= crossing.timeS);
  const near = gaps.find((gap) => nearCrossing(gap, crossing));
  const gap = over ?? near;
  if (gap === undefined) return null;
  const gapS = gap.toS - gap.fromS;
  const figures = {
    gapS,
    fromS: gap.fromS,
    toS: gap.toS,
    cause: gap.cause,
    crossingS: crossing.timeS,
    standardUncertaintyS: crossing.standardUncertaintyS,
  };
  const lost =
    (over !== undefined && gapS > LIMITS.gapAtCrossingS) ||
    crossing.standardUncertaintyS > LIMITS.crossingUncertaintyS;
  if (lost)
    return {
      code: gap.cause === 'fault' ? 'fault-at-crossing' : 'gap-at-crossing',
      severity: 'unusable',
      facts: figures,
    };
  return { code: 'gap-near-crossing', severity: 'suspect', facts: figures };
};

/** True for a gap within half of the window that the final figure rests on. */
export function nearCrossing(gap: Gap, crossing: Crossing): boolean {
  return (
    gap.toS > crossing.timeS - LIMITS.nearCrossingS / 2 &&
    gap.fromS < crossing.timeS + LIMITS.nearCrossingS / 2
  );
}
