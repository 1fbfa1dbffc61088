import type { BondingCycle } from './BondingCycle.ts';

/** Each cycle with its number among all of its assembly on its press, 1 first, in the order they were logged. */
export function numberCycles(
  all: readonly BondingCycle[],
): readonly { readonly number: number; readonly cycle: BondingCycle }[] {
  const counts = new Map<string, number>();
  return all.map((cycle) => {
    const key = JSON.stringify([cycle.assemblyName, cycle.pressName]);
    const number = (counts.get(key) ?? 0) + 1;
    counts.set(key, number);
    return { number, cycle };
  });
}
