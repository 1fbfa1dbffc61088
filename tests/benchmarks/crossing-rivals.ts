import { fitExponentialRise } from '../../src/core/heating-fit/fit-exponential-rise.ts';
import type { Samples } from '../../src/core/run/collect-samples.ts';

/** What a user would otherwise take as the crossing; NaN where it gives none. */
export const RIVALS = {
  'first reading above': ({ timesS, valuesC }: Samples, targetC: number): number =>
    timesS[firstAbove(valuesC, targetC)] ?? Number.NaN,
  'straight line between two readings': ({ timesS, valuesC }: Samples, targetC: number): number =>
    between(timesS, valuesC, targetC),
  'mean over 1 s, then straight line': ({ timesS, valuesC }: Samples, targetC: number): number => {
    const count = timesS.length;
    const smooth = new Float64Array(count);
    let [from, to, sum] = [0, 0, 0];
    for (let i = 0; i < count; i += 1) {
      while (to < count && timesS[to]! <= timesS[i]! + 0.5) sum += valuesC[to++]!;
      while (timesS[from]! < timesS[i]! - 0.5) sum -= valuesC[from++]!;
      smooth[i] = sum / (to - from);
    }
    return between(timesS, smooth, targetC);
  },
} as const;

export type Rival = keyof typeof RIVALS;

function firstAbove(valuesC: Float64Array, targetC: number): number {
  return valuesC.findIndex((value) => value >= targetC);
}

function between(timesS: Float64Array, valuesC: Float64Array, targetC: number): number {
  const above = firstAbove(valuesC, targetC);
  if (above < 1) return Number.NaN;
  const share = (targetC - valuesC[above - 1]!) / (valuesC[above]! - valuesC[above - 1]!);
  return timesS[above - 1]! + share * (timesS[above]! - timesS[above - 1]!);
}

/** Crossing of the exponential laid through the whole rise by plain least squares, with its white-noise standard uncertainty. */
export function wholeRise(
  { timesS, valuesC }: Samples,
  targetC: number,
): { readonly timeS: number; readonly standardUncertaintyS: number } | null {
  const fit = fitExponentialRise(timesS, valuesC);
  if (fit === null || !(fit.plateau > targetC) || !(fit.drop > 0)) return null;
  const { plateau, drop, rate, origin, squares, inverse } = fit;
  const above = plateau - targetC;
  const afterS = Math.log(drop / above) / rate;
  // d/d(plateau, drop, rate) of ln(drop/(plateau − target))/rate.
  const g = [-1 / (above * rate), 1 / (drop * rate), -afterS / rate];
  let variance = 0;
  for (let i = 0; i < 3; i += 1) for (let j = 0; j < 3; j += 1) variance += g[i]! * g[j]! * inverse[i]![j]!;
  return {
    timeS: origin + afterS,
    standardUncertaintyS: Math.sqrt((variance * squares) / (timesS.length - 3)),
  };
}
