import type { Samples } from './collect-samples.ts';

export interface StraightCrossing {
  readonly timeS: number;
  readonly spacingS: number;
  readonly slopeCPerS: number;
}

/** Straight line between the two neighbours that enclose the target nearest to a time; null where none do. */
export function interpolateCrossing(
  { timesS, valuesC }: Samples,
  targetC: number,
  nearS: number,
): StraightCrossing | null {
  let best: StraightCrossing | null = null;
  for (let i = 1; i < timesS.length; i++) {
    if (!(valuesC[i]! >= targetC && valuesC[i - 1]! < targetC)) continue;
    const spacingS = timesS[i]! - timesS[i - 1]!;
    const share = (targetC - valuesC[i - 1]!) / (valuesC[i]! - valuesC[i - 1]!);
    const timeS = timesS[i - 1]! + share * spacingS;
    // Two readings of the same time: a steep but finite slope.
    const slopeCPerS = (valuesC[i]! - valuesC[i - 1]!) / Math.max(spacingS, 1e-3);
    if (best === null || Math.abs(timeS - nearS) < Math.abs(best.timeS - nearS))
      best = { timeS, spacingS, slopeCPerS };
  }
  return best;
}
