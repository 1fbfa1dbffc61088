import type { Samples } from '../run/collect-samples.ts';
import { solveSymmetric } from '../run/solve-symmetric.ts';

/** v(t) = a + s·(1 − e^(−k·u))/k with u = t − t₀; k = 0 is a straight line, 1/k the time constant. */
export interface RiseCurve {
  readonly middleS: number;
  /** Value (°C), slope (°C/s) at the middle, and k (1/s). */
  readonly valueC: number;
  readonly rateCPerS: number;
  readonly k: number;
  /** Covariance of value, rate and k, widened where neighbouring residuals go together. */
  readonly covariance: readonly (readonly number[])[];
  readonly residualsC: Float64Array;
  readonly rmsC: number;
}

const ROUNDS = 30;

/**
 * First-order rise through the readings by Gauss–Newton, written about the middle of the stretch so that a nearly
 * straight one gives no trouble. Null under eight readings or where it does not settle.
 */
export function fitRiseCurve({ timesS, valuesC }: Samples): RiseCurve | null {
  const count = timesS.length;
  if (count < 8) return null;
  const middleS = (timesS[0]! + timesS[count - 1]!) / 2;
  const half = (timesS[count - 1]! - timesS[0]!) / 2;
  if (!(half > 0)) return null;
  let [a, s, k] = straightLine(timesS, valuesC, middleS, half);
  let cost = Number.POSITIVE_INFINITY;
  let inverse: number[][] | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    let m01 = 0;
    let m02 = 0;
    let m11 = 0;
    let m12 = 0;
    let m22 = 0;
    let r0 = 0;
    let r1 = 0;
    let r2 = 0;
    let sum = 0;
    for (let i = 0; i < count; i++) {
      const u = (timesS[i]! - middleS) / half;
      const byS = rise(k, u);
      const byK = s * riseByK(k, u);
      const left = valuesC[i]! - (a + s * byS);
      sum += left * left;
      m01 += byS;
      m02 += byK;
      m11 += byS * byS;
      m12 += byS * byK;
      m22 += byK * byK;
      r0 += left;
      r1 += left * byS;
      r2 += left * byK;
    }
    const matrix = [
      [count, m01, m02],
      [m01, m11, m12],
      [m02, m12, m22],
    ];
    const solved = solveSymmetric(matrix, [r0, r1, r2]);
    if (solved === null || !Number.isFinite(sum)) return null;
    inverse = solved.inverse();
    const settled = Math.abs(cost - sum) <= 1e-10 * sum + 1e-18;
    cost = sum;
    if (settled) break;
    const [da, ds, dk] = solved.solution as [number, number, number];
    a += da;
    s += ds;
    k += Math.max(-1, Math.min(1, dk));
  }
  if (inverse === null || ![a, s, k].every(Number.isFinite)) return null;
  const residualsC = Float64Array.from(
    valuesC,
    (value, i) => value - (a + s * rise(k, (timesS[i]! - middleS) / half)),
  );
  const scales = [1, 1 / half, 1 / half];
  const variance = (cost / Math.max(1, count - 3)) * togetherness(residualsC);
  return {
    middleS,
    valueC: a,
    rateCPerS: s / half,
    k: k / half,
    covariance: inverse.map((row, p) => row.map((entry, q) => entry * variance * scales[p]! * scales[q]!)),
    residualsC,
    rmsC: Math.sqrt(cost / count),
  };
}

/** (1 − e^(−k·u))/k, smooth through k = 0. */
export function rise(k: number, u: number): number {
  const x = k * u;
  return Math.abs(x) < 1e-4 ? u * (1 - x / 2 + (x * x) / 6) : -Math.expm1(-x) / k;
}

function riseByK(k: number, u: number): number {
  const x = k * u;
  if (Math.abs(x) < 1e-2) return u * u * (-1 / 2 + x / 3 - (x * x) / 8 + x ** 3 / 30);
  return (u * Math.exp(-x)) / k + Math.expm1(-x) / (k * k);
}

function straightLine(
  timesS: Float64Array,
  valuesC: Float64Array,
  middleS: number,
  half: number,
): [number, number, number] {
  let u1 = 0;
  let u2 = 0;
  let y1 = 0;
  let uy = 0;
  for (let i = 0; i < timesS.length; i++) {
    const u = (timesS[i]! - middleS) / half;
    u1 += u;
    u2 += u * u;
    y1 += valuesC[i]!;
    uy += u * valuesC[i]!;
  }
  const n = timesS.length;
  const slope = (uy - (u1 * y1) / n) / (u2 - (u1 * u1) / n);
  return [(y1 - slope * u1) / n, slope, 0];
}

/** (1 + r)/(1 − r) with r the correlation of neighbouring residuals, never below 1: neighbours that go together tell less. */
function togetherness(residuals: Float64Array): number {
  let own = 0;
  let next = 0;
  for (let i = 0; i < residuals.length; i++) {
    own += residuals[i]! ** 2;
    if (i > 0) next += residuals[i]! * residuals[i - 1]!;
  }
  const r = own === 0 ? 0 : Math.max(0, Math.min(0.95, next / own));
  return (1 + r) / (1 - r);
}
