import type { Samples } from './collect-samples.ts';
import { median } from './median.ts';

export interface Jump {
  readonly timeS: number;
  /** Signed size, °C. */
  readonly stepC: number;
  /** Level after it, °C. */
  readonly levelC: number;
  /** False where the step is mostly undone within the next 1.5 s. */
  readonly stays: boolean;
}

/**
 * Sudden steps that stay: from one reading to the next by more than 1.5 °C, eight standard deviations and four steps of the
 * reader, kept by the median of the next three readings, and six times what the readings before and after
 * move by themselves, so that steep heating seen by a slow reader is none. Limits are judgement, no source.
 */
export function findJumps({ timesS, valuesC }: Samples, noiseC: number, resolutionC: number): Jump[] {
  const leastC = Math.max(1.5, 8 * noiseC, 4 * resolutionC);
  const jumps: Jump[] = [];
  for (let i = 3; i + 2 < valuesC.length; i++) {
    const stepC = valuesC[i]! - valuesC[i - 1]!;
    if (stepC < leastC && stepC > -leastC) continue;
    // Over a gap nothing is sudden.
    if (timesS[i]! - timesS[i - 1]! > 2.5 * (timesS[i - 1]! - timesS[i - 3]!)) continue;
    const before = middle(valuesC[i - 3]!, valuesC[i - 2]!, valuesC[i - 1]!);
    const after = middle(valuesC[i]!, valuesC[i + 1]!, valuesC[i + 2]!);
    const keptC = after - before;
    if (Math.sign(keptC) !== Math.sign(stepC) || Math.abs(keptC) < 0.6 * Math.abs(stepC)) continue;
    const drift = Math.max(
      Math.abs(valuesC[i - 1]! - valuesC[i - 3]!) / 2,
      Math.abs(valuesC[i + 2]! - valuesC[i]!) / 2,
    );
    if (Math.abs(stepC) < 6 * Math.max(0, drift - noiseC)) continue;
    if (Math.abs(stepC) < 0.7 * Math.abs(keptC)) continue;
    jumps.push({
      timeS: timesS[i]!,
      stepC,
      levelC: after,
      stays: stays({ timesS, valuesC }, i, before, keptC),
    });
  }
  return jumps;
}

/** The level between 0.5 and 2 s after the step (or the next three readings) keeps half of it. */
function stays({ timesS, valuesC }: Samples, at: number, beforeC: number, keptC: number): boolean {
  const later: number[] = [];
  for (let i = at; i < timesS.length; i++) {
    if (timesS[i]! > timesS[at]! + 2 && later.length >= 3) break;
    if (timesS[i]! >= timesS[at]! + 0.5) later.push(valuesC[i]!);
  }
  const level = median(later);
  return level === null || (level - beforeC) / keptC > 0.5;
}

function middle(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}
