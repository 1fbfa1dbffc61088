import { LIMITS } from '../limits.ts';
import type { RunCheck } from './RunCheck.ts';

/**
 * Readings are missing where the bond line crossed. Over 5 s, or when the crossing is then known worse than 0.5 s: unusable;
 * shorter: suspect, with the uncertainty as wide as the readings left allow. Limits are judgement, no source.
 */
export const gapAtCrossing: RunCheck = (facts) => {
  const { crossing, gaps } = facts;
  if (crossing === null) return null;
  const over = gaps.find((gap) => gap.fromS <= crossing.timeS && gap.toS >= crossing.timeS);
  const near = gaps.find(
    (gap) =>
      gap.toS > crossing.timeS - LIMITS.nearCrossingS / 2 &&
      gap.fromS < crossing.timeS + LIMITS.nearCrossingS / 2,
  );
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
