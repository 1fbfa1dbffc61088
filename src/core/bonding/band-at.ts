import type { ChartBandPoint } from '../chart/ChartSpec.ts';

/** Lowest and highest of the recipe's runs `timeS` after press closed; null where they say nothing of that time. */
export function bandAt(
  band: readonly ChartBandPoint[],
  timeS: number,
): { readonly lowC: number; readonly highC: number } | null {
  let [low, high] = [0, band.length - 1];
  const first = band[low];
  const last = band[high];
  if (first === undefined || last === undefined || timeS < first.timeS || timeS > last.timeS) return null;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (band[middle]!.timeS <= timeS) low = middle;
    else high = middle;
  }
  const [a, b] = [band[low]!, band[high]!];
  const share = b.timeS > a.timeS ? (timeS - a.timeS) / (b.timeS - a.timeS) : 0;
  return { lowC: a.lowC + (b.lowC - a.lowC) * share, highC: a.highC + (b.highC - a.highC) * share };
}
