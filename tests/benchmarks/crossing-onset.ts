import { estimateOnset } from '../../src/core/run/estimate-onset.ts';
import { createNoise } from '../core/run/make-heating.ts';
import { createTally, type Spread } from './crossing-monte-carlo.ts';

export interface OnsetCase {
  readonly name: string;
  readonly rateHz: number;
  readonly noiseC: number;
  readonly stepC: number;
  /** Data after the onset, s. */
  readonly afterS: number;
}

export const ONSET_CASES: readonly OnsetCase[] = [
  { name: '10 Hz, σ 0.25 °C, 3 s of rise', rateHz: 10, noiseC: 0.25, stepC: 0.25, afterS: 3 },
  { name: '10 Hz, σ 1.0 °C, 3 s of rise', rateHz: 10, noiseC: 1, stepC: 0.25, afterS: 3 },
  { name: '2 Hz, σ 0.25 °C, 3 s of rise', rateHz: 2, noiseC: 0.25, stepC: 0.25, afterS: 3 },
  { name: '1 Hz, σ 0.25 °C, 4 s of rise', rateHz: 1, noiseC: 0.25, stepC: 0.25, afterS: 4 },
  { name: '10 Hz, σ 0.02 °C (under q/4)', rateHz: 10, noiseC: 0.02, stepC: 0.25, afterS: 3 },
];

const BASELINE_S = 15;
const SLOPE_C_PER_S = 208.2 / 40.5;
const TAU_S = 40.5;

/** A first-order rise out of 24 °C at a random moment: error and coverage of the onset, and its bound. */
export function onsetMonteCarlo(
  one: OnsetCase,
  runs: number,
  seed = 1,
): Spread & { readonly boundS: number } {
  const { rateHz, noiseC, stepC, afterS } = one;
  const random = createNoise(seed);
  const tally = createTally();
  let bounds = 0;
  for (let run = 0; run < runs; run++) {
    const onsetS = BASELINE_S + random.uniform();
    const count = Math.floor((onsetS + afterS) * rateHz);
    const timesS = new Float64Array(count);
    const valuesC = new Float64Array(count);
    const phase = random.uniform();
    for (let i = 0; i < count; i++) {
      const timeS = (i + phase) / rateHz;
      const x = Math.max(0, timeS - onsetS);
      const valueC = 24 + SLOPE_C_PER_S * TAU_S * -Math.expm1(-x / TAU_S) + noiseC * random.normal();
      timesS[i] = timeS;
      valuesC[i] = Math.round(valueC / stepC) * stepC;
    }
    bounds += onsetBound(timesS, onsetS, Math.hypot(noiseC, stepC / Math.sqrt(12))) ** 2;
    const onset = estimateOnset({ timesS, valuesC }, stepC);
    if (onset !== null) tally.add(onset.timeS - onsetS, onset.standardUncertaintyS);
  }
  return { ...tally.spread(), boundS: Math.sqrt(bounds / runs) };
}

/** Cramér–Rao bound of the kink for level, slope and curvature free, by the 3×3 block left after the level is taken out. */
function onsetBound(timesS: Float64Array, onsetS: number, noiseC: number): number {
  // Derivatives by (kink, level, slope, curvature) of b + s·x + c·x², x = t − kink; c is small against s/τ.
  const m = Array.from({ length: 4 }, () => [0, 0, 0, 0]);
  const c = -SLOPE_C_PER_S / (2 * TAU_S);
  for (const timeS of timesS) {
    const x = Math.max(0, timeS - onsetS);
    const d = [x > 0 ? -(SLOPE_C_PER_S + 2 * c * x) : 0, 1, x, x * x];
    for (let i = 0; i < 4; i++) for (let j = 0; j < 4; j++) m[i]![j]! += d[i]! * d[j]!;
  }
  // Schur complement of the kink: the nuisance columns are eliminated one after another.
  for (let k = 3; k >= 1; k--)
    for (let i = 0; i < k; i++) for (let j = 0; j < k; j++) m[i]![j]! -= (m[i]![k]! * m[k]![j]!) / m[k]![k]!;
  return noiseC / Math.sqrt(m[0]![0]!);
}
