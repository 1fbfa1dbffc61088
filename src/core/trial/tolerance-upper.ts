import { toleranceFactor } from '../statistics/tolerance-factor.ts';
import type { TrialStatistics } from './TrialResult.ts';

/** What the tolerance rule promises: at least `content` of all cycles, with `confidence`. */
export interface ToleranceWish {
  readonly content: number;
  readonly confidence: number;
}

/** 95/95: common practice, no source. */
export const TOLERANCE_WISH: ToleranceWish = { content: 0.95, confidence: 0.95 };

/** Soak time, s, that the stated share of all cycles does not pass: mean + k·s. Null under two runs. */
export function toleranceUpperS(
  { runs, meanSoakS, sdSoakS }: TrialStatistics,
  { content, confidence }: ToleranceWish = TOLERANCE_WISH,
): number | null {
  if (meanSoakS === null || sdSoakS === null) return null;
  return meanSoakS + toleranceFactor(runs, content, confidence) * sdSoakS;
}
