import type { RunFacts } from '../RunFacts.ts';

/** Hottest and coldest platen as far as known: measured at closing, else the set point. Null when neither is known. */
export function knownPlatens(
  facts: RunFacts,
): { readonly hottestC: number; readonly coldestC: number } | null {
  const { upper, lower } = facts.platenAtClosingC;
  const set = facts.rules.platenSetPointC;
  const known = [upper ?? set?.upper, lower ?? set?.lower].filter((each) => each !== undefined);
  return known.length === 0 ? null : { hottestC: Math.max(...known), coldestC: Math.min(...known) };
}
