import { knownPlatens } from './known-platens.ts';
import type { RunCheck } from './RunCheck.ts';

/** Time constant of the rise above which the part is hardly pressed, s. Common practice, no source: the trade's example has 40 s. */
const LONGEST_TIME_CONSTANT_S = 52;

/**
 * Every bond-line channel rises slowly with a long tail although it tends to the platens' temperature: the ram was low or
 * the press not fully closed. Judged only where platens are measured or their set point known.
 */
export const slowRise: RunCheck = (facts) => {
  const platens = knownPlatens(facts);
  const constants = facts.bondLine.flatMap((one) => (one.fit === null ? [] : [one.fit.timeConstantS]));
  if (platens === null || constants.length === 0) return null;
  const timeConstantS = Math.min(...constants);
  if (timeConstantS <= LONGEST_TIME_CONSTANT_S) return null;
  return {
    code: 'slow-rise',
    severity: 'suspect',
    facts: { timeConstantS, limitS: LONGEST_TIME_CONSTANT_S },
  };
};
