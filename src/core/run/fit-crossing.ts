import type { Samples } from './collect-samples.ts';
import { type Curve, type CurveAtReadings, curveStep, evaluateCurve, moveCurve } from './heating-curve.ts';
import { medianInPlace } from './median.ts';
import { solveThree } from './solve-three.ts';
import { startWeights } from './start-weights.ts';

/** Tukey's biweight with 95 % efficiency at normal noise (Beaton and Tukey 1974; from memory). */
export const TUKEY = 4.685;
/** A step that moves the crossing and the bend by less than this share of the record is as good as linear. */
const LINEAR = 2e-3;

export interface FittedCurve extends CurveAtReadings {
  readonly curve: Curve;
  /** Scale of the residuals, °C. */
  readonly scaleC: number;
  /** Least standard deviation of a reading: q/√12, °C. */
  readonly floorC: number;
  readonly timesS: Float64Array;
}

/**
 * When a rising temperature passes a target, from the readings around it.
 *
 * Fits T(t) = target + s·(1 − exp(−k·(t − tc)))/k, the heating curve of first order written with the crossing
 * time tc itself as a parameter (s = slope at the crossing in °C/s, k = 1/τ; k → 0 is a straight line),
 * by least squares with Tukey's weights so that spikes carry none. Three free parameters, as many as
 * plateau, start and time constant. Starts from `start` or from a quadratic about the guess.
 * @returns null where fewer than four readings exist or no rising curve through the target fits.
 */
export function fitCrossing(
  samples: Samples,
  targetC: number,
  resolutionC: number,
  guessS: number,
  start: Curve | null = null,
): FittedCurve | null {
  const { timesS, valuesC } = samples;
  const count = timesS.length;
  if (count < 4) return null;
  const floorC = Math.max(resolutionC / Math.sqrt(12), 1e-6);
  const weights = startWeights(timesS, valuesC, floorC);
  const first = start ?? startCurve(timesS, valuesC, weights, targetC, guessS);
  if (first === null) return null;
  const at: CurveAtReadings = {
    residuals: new Float64Array(count),
    byTc: new Float64Array(count),
    byS: new Float64Array(count),
    byK: new Float64Array(count),
  };
  let curve = gaussNewton(timesS, valuesC, weights, targetC, first, at);
  if (curve === null) return null;
  const spanS = timesS[count - 1]! - timesS[0]!;
  const sizes = new Float64Array(count);
  let scaleC = floorC;
  for (let round = 0; round < 4; round++) {
    scaleC = reweigh(at.residuals, sizes, floorC, weights);
    const step = curveStep(weights, at);
    if (step === null) return null;
    const large = Math.abs(step[0]) > LINEAR * spanS || Math.abs(step[2]) * spanS > 10 * LINEAR;
    curve = moveCurve(curve, step, at);
    if (!(curve.s > 0 && Math.abs(curve.k) * spanS < 20)) return null;
    if (large) evaluateCurve(timesS, valuesC, weights, targetC, curve, at);
    else if (Math.abs(step[0]) < 1e-5 * spanS) break;
  }
  evaluateCurve(timesS, valuesC, weights, targetC, curve, at);
  const last = curveStep(weights, at);
  if (last === null) return null;
  curve = moveCurve(curve, last, at);
  return curve.s > 0 && Number.isFinite(curve.tc) ? { ...at, curve, scaleC, floorC, timesS } : null;
}

/** Scale by the median absolute residual, and Tukey's weights of it. */
function reweigh(
  residuals: Float64Array,
  sizes: Float64Array,
  floorC: number,
  weights: Float64Array,
): number {
  const count = residuals.length;
  for (let i = 0; i < count; i++) sizes[i] = Math.abs(residuals[i]!);
  const scaleC = Math.max(1.4826 * medianInPlace(sizes) * Math.sqrt(count / Math.max(1, count - 3)), floorC);
  const reach = 1 / (TUKEY * scaleC);
  for (let i = 0; i < count; i++) {
    const u = residuals[i]! * reach;
    const v = 1 - u * u;
    weights[i] = v > 0 ? v * v : 0;
  }
  return scaleC;
}

/** Weighted quadratic about the guess, solved for the target on its rising side. */
function startCurve(
  timesS: Float64Array,
  valuesC: Float64Array,
  weights: Float64Array,
  targetC: number,
  guessS: number,
): Curve | null {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let s4 = 0;
  let y0 = 0;
  let y1 = 0;
  let y2 = 0;
  for (let i = 0; i < timesS.length; i++) {
    if (weights[i] === 0) continue;
    const x = timesS[i]! - guessS;
    const xx = x * x;
    const y = valuesC[i]! - targetC;
    s0 += 1;
    s1 += x;
    s2 += xx;
    s3 += xx * x;
    s4 += xx * xx;
    y0 += y;
    y1 += x * y;
    y2 += xx * y;
  }
  const solved = solveThree({ aa: s0, ab: s1, ac: s2, bb: s2, bc: s3, cc: s4 }, [y0, y1, y2]);
  if (solved === null) return null;
  const [a, b, c] = solved;
  const inside = b * b - 4 * a * c;
  if (inside <= 0) return null;
  // Root with the rising slope, √inside = slope there; written without cancellation.
  const root = Math.sqrt(inside);
  const x = b > 0 ? (-2 * a) / (b + root) : (-b + root) / (2 * c);
  if (!Number.isFinite(x)) return null;
  return { tc: guessS + x, s: root, k: (-2 * c) / root };
}

/** Gauss–Newton with halved steps until a step is as good as linear; leaves residuals and derivatives at the curve returned. */
function gaussNewton(
  timesS: Float64Array,
  valuesC: Float64Array,
  weights: Float64Array,
  targetC: number,
  start: Curve,
  at: CurveAtReadings,
): Curve | null {
  const spanS = timesS[timesS.length - 1]! - timesS[0]!;
  let curve = start;
  let cost = evaluateCurve(timesS, valuesC, weights, targetC, curve, at);
  for (let round = 0; round < 10; round++) {
    const step = curveStep(weights, at);
    if (step === null) return null;
    const [dt, ds, dk] = step;
    if (Math.abs(dt) < LINEAR * spanS && Math.abs(dk) * spanS < 5 * LINEAR && curve.s + ds > 0) {
      curve = moveCurve(curve, step, at);
      break;
    }
    let fraction = 1;
    let next = curve;
    let after = Number.POSITIVE_INFINITY;
    for (; fraction > 0.01; fraction /= 2) {
      next = { tc: curve.tc + fraction * dt, s: curve.s + fraction * ds, k: curve.k + fraction * dk };
      if (!(next.s > 0 && Math.abs(next.k) * spanS < 20)) continue;
      after = evaluateCurve(timesS, valuesC, weights, targetC, next, at);
      if (after <= cost) break;
    }
    if (fraction <= 0.01) {
      evaluateCurve(timesS, valuesC, weights, targetC, curve, at);
      break;
    }
    curve = next;
    cost = after;
  }
  return curve.s > 0 && Number.isFinite(curve.tc) ? curve : null;
}
