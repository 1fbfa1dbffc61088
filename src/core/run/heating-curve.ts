import { type SymmetricThree, solveThree, type Three } from './solve-three.ts';

/** A heating curve of first order written about its crossing of the target: T(x) = target + s·(1 − exp(−k·x))/k. */
export interface Curve {
  /** Crossing time, s. */
  readonly tc: number;
  /** Slope at the crossing, °C/s. */
  readonly s: number;
  /** 1/τ, 1/s; 0 is a straight line. */
  readonly k: number;
}

/** What one curve leaves over at each reading, and its derivatives there by (tc, s, k). */
export interface CurveAtReadings {
  readonly residuals: Float64Array;
  readonly byTc: Float64Array;
  readonly byS: Float64Array;
  readonly byK: Float64Array;
}

/** Below this |z| the series stands in for the quotient; its error there is under 1e-12. */
const SMALL = 0.01;

/** Fills residuals and derivatives of a curve; returns the weighted sum of squares. One exponential a reading. */
export function evaluateCurve(
  timesS: Float64Array,
  valuesC: Float64Array,
  weights: Float64Array,
  targetC: number,
  { tc, s, k }: Curve,
  { residuals, byTc, byS, byK }: CurveAtReadings,
): number {
  let cost = 0;
  for (let i = 0; i < timesS.length; i++) {
    const x = timesS[i]! - tc;
    const z = k * x;
    let e: number;
    // share = (1 − e^−z)/z and its derivative.
    let share: number;
    let slope: number;
    if (z < SMALL && z > -SMALL) {
      share = 1 - z * (1 / 2 - z * (1 / 6 - z * (1 / 24 - z / 120)));
      slope = -1 / 2 + z * (1 / 3 - z * (1 / 8 - z * (1 / 30 - z / 144)));
      e = 1 - z * share;
    } else {
      e = Math.exp(-z);
      share = (1 - e) / z;
      slope = (e * (1 + z) - 1) / (z * z);
    }
    const r = valuesC[i]! - targetC - s * x * share;
    residuals[i] = r;
    byTc[i] = -s * e;
    byS[i] = x * share;
    byK[i] = s * x * x * slope;
    cost += weights[i]! * r * r;
  }
  return cost;
}

/** Gauss–Newton step (δtc, δs, δk) by weighted least squares of the residuals; null where singular. */
export function curveStep(
  weights: Float64Array,
  { residuals, byTc, byS, byK }: CurveAtReadings,
): Three | null {
  let ra = 0;
  let rb = 0;
  let rc = 0;
  let aa = 0;
  let ab = 0;
  let ac = 0;
  let bb = 0;
  let bc = 0;
  let cc = 0;
  for (let i = 0; i < weights.length; i++) {
    const w = weights[i]!;
    if (w === 0) continue;
    const a = byTc[i]!;
    const b = byS[i]!;
    const c = byK[i]!;
    const wa = w * a;
    const wb = w * b;
    const r = residuals[i]!;
    ra += wa * r;
    rb += wb * r;
    rc += w * c * r;
    aa += wa * a;
    ab += wa * b;
    ac += wa * c;
    bb += wb * b;
    bc += wb * c;
    cc += w * c * c;
  }
  return solveThree({ aa, ab, ac, bb, bc, cc }, [ra, rb, rc]);
}

/** JᵀJ of the curve at its readings, all of weight one. */
export function curveInformation({ byTc, byS, byK }: CurveAtReadings): SymmetricThree {
  let aa = 0;
  let ab = 0;
  let ac = 0;
  let bb = 0;
  let bc = 0;
  let cc = 0;
  for (let i = 0; i < byTc.length; i++) {
    const a = byTc[i]!;
    const b = byS[i]!;
    const c = byK[i]!;
    aa += a * a;
    ab += a * b;
    ac += a * c;
    bb += b * b;
    bc += b * c;
    cc += c * c;
  }
  return { aa, ab, ac, bb, bc, cc };
}

/** The curve moved by a step, and the residuals with it as far as the derivatives tell. */
export function moveCurve(curve: Curve, step: Three, { residuals, byTc, byS, byK }: CurveAtReadings): Curve {
  const [dt, ds, dk] = step;
  for (let i = 0; i < residuals.length; i++)
    residuals[i] = residuals[i]! - dt * byTc[i]! - ds * byS[i]! - dk * byK[i]!;
  return { tc: curve.tc + dt, s: curve.s + ds, k: curve.k + dk };
}
