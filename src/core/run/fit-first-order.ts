import type { Samples } from './collect-samples.ts';
import { solveThree } from './solve-three.ts';

export interface FirstOrderFit {
  /** Temperature that the curve tends to, °C. */
  readonly plateauC: number;
  readonly timeConstantS: number;
  /** When the curve leaves `startC`, s. */
  readonly departsS: number;
  /** Root mean square of what is left over, °C. */
  readonly rmsC: number;
}

/** Readings used, evenly picked. */
const MOST = 150;
/** Time constants looked over, s: each half of the one before, down to 1 s. */
const LONGEST_S = 2048;
const HALVINGS = 11;
/** Gauss–Newton rounds from the best of them; each trebles the good digits or so. */
const ROUNDS = 5;

interface AtRate {
  readonly plateauC: number;
  readonly amplitudeC: number;
  readonly cost: number;
}

/**
 * Heating curve of first order, T = Tp − A·exp(−t/τ): linear least squares in Tp and A for each τ; τ looked over from 2048 s
 * down to 1 s by halves (where exp(−t/τ) is squared from one to the next) and then by Gauss–Newton (variable projection).
 * @returns null with fewer than eight readings or when the curve does not rise.
 */
export function fitFirstOrder({ timesS, valuesC }: Samples, startC: number): FirstOrderFit | null {
  const stride = Math.max(1, Math.ceil(timesS.length / MOST));
  const count = Math.ceil(timesS.length / stride);
  if (count < 8) return null;
  const fromS = timesS[0]!;
  const times = new Float64Array(count);
  const values = new Float64Array(count);
  const decay = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    times[i] = timesS[i * stride]! - fromS;
    values[i] = valuesC[i * stride]! - startC;
  }
  let rate = bestOfHalvings(times, values, decay);
  fillDecay(times, decay, rate);
  let fit = leastSquares(decay, values);
  for (let round = 0; round < ROUNDS && fit !== null; round++) {
    const step = rateStep(times, values, decay);
    if (step === null) break;
    const next = Math.min(1, Math.max(1 / LONGEST_S, rate + Math.max(-rate / 2, Math.min(rate, step))));
    fillDecay(times, decay, next);
    const tried = leastSquares(decay, values);
    if (tried === null || !(tried.cost < fit.cost)) break;
    const small = Math.abs(next - rate) < 1e-6 * rate;
    rate = next;
    fit = tried;
    if (small) break;
  }
  if (fit === null || !(fit.amplitudeC > 0) || fit.plateauC <= 0) return null;
  const departsS = fromS - Math.log(fit.plateauC / fit.amplitudeC) / rate;
  if (!Number.isFinite(departsS)) return null;
  return {
    plateauC: fit.plateauC + startC,
    timeConstantS: 1 / rate,
    departsS,
    rmsC: Math.sqrt(fit.cost / count),
  };
}

function fillDecay(times: Float64Array, decay: Float64Array, rate: number): void {
  for (let i = 0; i < decay.length; i++) decay[i] = Math.exp(-rate * times[i]!);
}

function bestOfHalvings(times: Float64Array, values: Float64Array, decay: Float64Array): number {
  fillDecay(times, decay, 1 / LONGEST_S);
  let rate = 1 / LONGEST_S;
  let best = rate;
  let least = leastSquares(decay, values)?.cost ?? Number.POSITIVE_INFINITY;
  for (let halving = 0; halving < HALVINGS; halving++) {
    rate *= 2;
    for (let i = 0; i < decay.length; i++) decay[i] = decay[i]! * decay[i]!;
    const cost = leastSquares(decay, values)?.cost ?? Number.POSITIVE_INFINITY;
    if (cost < least) [best, least] = [rate, cost];
  }
  return best;
}

function leastSquares(decay: Float64Array, values: Float64Array): AtRate | null {
  const count = decay.length;
  let e1 = 0;
  let e2 = 0;
  let v1 = 0;
  let v2 = 0;
  let ev = 0;
  for (let i = 0; i < count; i++) {
    const e = decay[i]!;
    const v = values[i]!;
    e1 += e;
    e2 += e * e;
    v1 += v;
    v2 += v * v;
    ev += e * v;
  }
  const see = e2 - (e1 * e1) / count;
  if (!(see > 1e-12 * e2)) return null;
  const slope = (ev - (e1 * v1) / count) / see;
  const cost = Math.max(0, v2 - (v1 * v1) / count - slope * slope * see);
  return { plateauC: (v1 - slope * e1) / count, amplitudeC: -slope, cost };
}

/** By how much the rate is to change: T = p + q·e + r·t·e, change −r/q. */
function rateStep(times: Float64Array, values: Float64Array, decay: Float64Array): number | null {
  let e1 = 0;
  let e2 = 0;
  let f1 = 0;
  let ef = 0;
  let f2 = 0;
  let v1 = 0;
  let ev = 0;
  let fv = 0;
  for (let i = 0; i < decay.length; i++) {
    const e = decay[i]!;
    const f = times[i]! * e;
    const v = values[i]!;
    e1 += e;
    e2 += e * e;
    f1 += f;
    ef += e * f;
    f2 += f * f;
    v1 += v;
    ev += e * v;
    fv += f * v;
  }
  const solved = solveThree({ aa: decay.length, ab: e1, ac: f1, bb: e2, bc: ef, cc: f2 }, [v1, ev, fv]);
  return solved === null || !(solved[1] < 0) ? null : -solved[2] / solved[1];
}
