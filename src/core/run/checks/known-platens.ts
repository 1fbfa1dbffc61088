import type { RunFacts } from '../RunFacts.ts';

/** Hottest and coldest platen as far as known. Null when neither channel nor set point tells. */
export interface KnownPlatens {
  /** Hottest at any time of the run, measured or set. */
  readonly hottestC: number;
  /** Coldest at closing, measured, else set. */
  readonly coldestC: number;
}

export function knownPlatens(facts: RunFacts): KnownPlatens | null {
  const { upper, lower } = facts.platenAtClosingC;
  const set = facts.rules.platenSetPointC;
  const atClosing = [upper ?? set?.upper, lower ?? set?.lower].filter((each) => each !== undefined);
  if (atClosing.length === 0) return null;
  const peaks = facts.platens.flatMap((one) => (one.peakC === null ? [] : [one.peakC]));
  const setPoints = set === null ? [] : [set.upper, set.lower];
  return { hottestC: Math.max(...atClosing, ...peaks, ...setPoints), coldestC: Math.min(...atClosing) };
}
