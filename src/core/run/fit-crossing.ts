import type { Samples } from './collect-samples.ts';
import { type CrossingFit, crossingUncertainty, TUKEY } from './crossing-uncertainty.ts';
import { type Curve, heatingCurve, normalEquations } from './heating-curve.ts';
import { median } from './median.ts';
import { solveSymmetric } from './solve-symmetric.ts';

/**
 * When a rising temperature passes a target, from the readings around it.
 *
 * Fits T(t) = target + s·(1 − exp(−k·(t − tc)))/k, the heating curve of first order written with the crossing
 * time tc itself as a parameter (s = slope at the crossing in °C/s, k = 1/τ; k → 0 is a straight line),
 * by least squares with Tukey's weights so that spikes carry none. Three free parameters, as many as
 * plateau, start and time constant.
 * Standard uncertainty from the scatter about the curve, never below q/√12 for readings in steps of q,
 * widened for autocorrelated noise by √((1+ρ)/(1−ρ)) and for few readings by Student's t.
 * @returns null where fewer than four readings exist or no rising curve through the target fits.
 */
export function fitCrossing(
  samples: Samples,
  targetC: number,
  resolutionC: number,
  guessS: number,
): CrossingFit | null {
  const { timesS, valuesC } = samples;
  const count = timesS.length;
  if (count < 4) return null;
  const floorC = Math.max(resolutionC / Math.sqrt(12), 1e-6);
  const weights = startWeights(timesS, valuesC, floorC);
  let curve = startCurve(timesS, valuesC, weights, targetC, guessS);
  if (curve === null) return null;
  const residuals = new Float64Array(count);
  let scaleC = floorC;
  for (let round = 0; round < 4; round++) {
    curve = gaussNewton(timesS, valuesC, weights, targetC, curve);
    if (curve === null) return null;
    const sizes = new Float64Array(count);
    for (let i = 0; i < count; i++) {
      residuals[i] = valuesC[i]! - heatingCurve(timesS[i]! - curve.tc, targetC, curve.s, curve.k);
      sizes[i] = Math.abs(residuals[i]!);
    }
    scaleC = Math.max(1.4826 * median(sizes)! * Math.sqrt(count / Math.max(1, count - 3)), floorC);
    for (let i = 0; i < count; i++) {
      const u = residuals[i]! / (TUKEY * scaleC);
      weights[i] = Math.abs(u) < 1 ? (1 - u * u) ** 2 : 0;
    }
  }
  return crossingUncertainty(timesS, residuals, scaleC, floorC, curve);
}

/** Weight 0 for readings far off a median straight line (Theil–Sen on at most 40 of them), else 1. */
function startWeights(timesS: Float64Array, valuesC: Float64Array, floorC: number): Float64Array {
  const count = timesS.length;
  const stride = Math.max(1, Math.ceil(count / 40));
  const slopes: number[] = [];
  for (let i = 0; i < count; i += stride)
    for (let j = i + stride; j < count; j += stride) {
      const dt = timesS[j]! - timesS[i]!;
      if (dt > 0) slopes.push((valuesC[j]! - valuesC[i]!) / dt);
    }
  const slope = median(slopes) ?? 0;
  const offsets = valuesC.map((value, i) => value - slope * timesS[i]!);
  const level = median(offsets)!;
  const spread = Math.max(1.4826 * median(offsets.map((offset) => Math.abs(offset - level)))!, floorC);
  return offsets.map((offset) => (Math.abs(offset - level) <= 6 * spread ? 1 : 0));
}

/** Weighted quadratic about the guess, solved for the target on its rising side. */
function startCurve(
  timesS: Float64Array,
  valuesC: Float64Array,
  weights: Float64Array,
  targetC: number,
  guessS: number,
): Curve | null {
  const matrix = [0, 1, 2].map(() => [0, 0, 0]);
  const right = [0, 0, 0];
  for (let i = 0; i < timesS.length; i++) {
    const x = timesS[i]! - guessS;
    const row = [1, x, x * x];
    for (let a = 0; a < 3; a++) {
      right[a]! += weights[i]! * row[a]! * (valuesC[i]! - targetC);
      for (let b = 0; b < 3; b++) matrix[a]![b]! += weights[i]! * row[a]! * row[b]!;
    }
  }
  const solved = solveSymmetric(matrix, right);
  if (solved === null) return null;
  const [a, b, c] = solved.solution as [number, number, number];
  const inside = b * b - 4 * a * c;
  if (inside <= 0) return null;
  // Root with the rising slope, √inside = slope there; written without cancellation.
  const root = Math.sqrt(inside);
  const x = b > 0 ? (-2 * a) / (b + root) : (-b + root) / (2 * c);
  if (!Number.isFinite(x)) return null;
  return { tc: guessS + x, s: root, k: (-2 * c) / root };
}

function gaussNewton(
  timesS: Float64Array,
  valuesC: Float64Array,
  weights: Float64Array,
  targetC: number,
  start: Curve,
): Curve | null {
  const cost = (c: Curve): number => {
    let sum = 0;
    for (let i = 0; i < timesS.length; i++) {
      const r = valuesC[i]! - heatingCurve(timesS[i]! - c.tc, targetC, c.s, c.k);
      sum += weights[i]! * r * r;
    }
    return sum;
  };
  const spanS = timesS[timesS.length - 1]! - timesS[0]!;
  let curve = start;
  let now = cost(curve);
  for (let step = 0; step < 10; step++) {
    const at = curve;
    const { matrix, right } = normalEquations(
      timesS,
      (i) => valuesC[i]! - heatingCurve(timesS[i]! - at.tc, targetC, at.s, at.k),
      (i) => weights[i]!,
      at,
    );
    const solved = solveSymmetric(matrix, right);
    if (solved === null) return null;
    let fraction = 1;
    let next = at;
    let after = now;
    for (; fraction > 0.01; fraction /= 2) {
      next = {
        tc: at.tc + fraction * solved.solution[0]!,
        s: at.s + fraction * solved.solution[1]!,
        k: at.k + fraction * solved.solution[2]!,
      };
      after = cost(next);
      if (after <= now && next.s > 0 && Math.abs(next.k) * spanS < 20) break;
    }
    if (fraction <= 0.01) break;
    const moved = Math.abs(next.tc - at.tc);
    curve = next;
    now = after;
    if (moved < 1e-7 * Math.max(spanS, 1e-3)) break;
  }
  return curve.s > 0 && Number.isFinite(curve.tc) ? curve : null;
}
