import type { Samples } from './collect-samples.ts';
import { median } from './median.ts';
import { solveSymmetric } from './solve-symmetric.ts';
import { studentFactor } from './student-factor.ts';

export interface CrossingFit {
  readonly timeS: number;
  readonly standardUncertaintyS: number;
  readonly slopeCPerS: number;
  /** Fall of the heating rate, 1/s: 1/τ of the local curve. */
  readonly rateFallPerS: number;
  /** Standard deviation of the readings about the curve, spikes left out, °C. */
  readonly noiseC: number;
  /** Lag-one autocorrelation of what the curve leaves over. */
  readonly autocorrelation: number;
  readonly readings: number;
}

/** Tukey's biweight with 95 % efficiency at normal noise (Beaton and Tukey 1974; from memory). */
const TUKEY = 4.685;

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
  return withUncertainty(timesS, residuals, scaleC, targetC, floorC, curve);
}

interface Curve {
  readonly tc: number;
  readonly s: number;
  readonly k: number;
}

/** T at x seconds after the crossing. */
function heatingCurve(x: number, targetC: number, s: number, k: number): number {
  return targetC + s * x * phi(k * x);
}

/** (1 − e^−z)/z, by its series near zero. */
function phi(z: number): number {
  return Math.abs(z) < 1e-3 ? 1 - z / 2 + (z * z) / 6 : -Math.expm1(-z) / z;
}

/** Derivative of phi. */
function phiSlope(z: number): number {
  return Math.abs(z) < 1e-2
    ? -1 / 2 + z / 3 - (z * z) / 8 + (z * z * z) / 30
    : (Math.exp(-z) * (1 + z) - 1) / (z * z);
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

function normalEquations(
  timesS: Float64Array,
  residual: (i: number) => number,
  weight: (i: number) => number,
  curve: Curve,
): { matrix: number[][]; right: number[] } {
  const matrix = [0, 1, 2].map(() => [0, 0, 0]);
  const right = [0, 0, 0];
  const { tc, s, k } = curve;
  for (let i = 0; i < timesS.length; i++) {
    const w = weight(i);
    if (w === 0) continue;
    const x = timesS[i]! - tc;
    const z = k * x;
    const j0 = -s * Math.exp(-z);
    const j1 = x * phi(z);
    const j2 = s * x * x * phiSlope(z);
    const r = residual(i) * w;
    right[0]! += j0 * r;
    right[1]! += j1 * r;
    right[2]! += j2 * r;
    matrix[0]![0]! += w * j0 * j0;
    matrix[1]![0]! += w * j1 * j0;
    matrix[1]![1]! += w * j1 * j1;
    matrix[2]![0]! += w * j2 * j0;
    matrix[2]![1]! += w * j2 * j1;
    matrix[2]![2]! += w * j2 * j2;
  }
  matrix[0]![1] = matrix[1]![0]!;
  matrix[0]![2] = matrix[2]![0]!;
  matrix[1]![2] = matrix[2]![1]!;
  return { matrix, right };
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

/** Sandwich of the M-estimate: n/(n−3)·mean(ψ²)/mean(ψ′)² · (JᵀJ)⁻¹, then the widenings. */
function withUncertainty(
  timesS: Float64Array,
  residuals: Float64Array,
  scaleC: number,
  targetC: number,
  floorC: number,
  curve: Curve,
): CrossingFit | null {
  const count = timesS.length;
  let psiSquared = 0;
  let psiSlope = 0;
  let lagged = 0;
  const psi = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const u = residuals[i]! / (TUKEY * scaleC);
    if (Math.abs(u) < 1) {
      psi[i] = residuals[i]! * (1 - u * u) ** 2;
      psiSlope += (1 - u * u) * (1 - 5 * u * u);
    }
    psiSquared += psi[i]! ** 2;
    if (i > 0) lagged += psi[i]! * psi[i - 1]!;
  }
  if (psiSlope < 0.3 * count) return null;
  const { matrix } = normalEquations(
    timesS,
    () => 0,
    () => 1,
    curve,
  );
  const solved = solveSymmetric(matrix, [0, 0, 0]);
  if (solved === null) return null;
  const degrees = Math.max(count - 3, 1);
  const raw = psiSquared > 0 ? lagged / psiSquared : 0;
  // The fit takes some of the correlation away (made good with enough readings); under fifteen readings it cannot be told.
  const made = count >= 60 ? (raw + 4 / count) / (1 - 8 / count) : count >= 15 ? raw : 0;
  const autocorrelation = Math.min(0.95, Math.max(0, made));
  const widening = (1 + autocorrelation) / (1 - autocorrelation);
  // A curve with three free figures takes three correlated stretches out of the scatter, not three readings.
  const left = Math.max(count - 3 * widening, degrees / 2);
  const noiseSquared = psiSquared / left / (psiSlope / count) ** 2;
  const student = studentFactor(Math.max(1, degrees / widening));
  const variance = Math.max(noiseSquared * student * student, floorC * floorC) * widening;
  const standardUncertaintyS = Math.sqrt(variance * solved.inverse()[0]![0]!);
  if (!Number.isFinite(standardUncertaintyS) || !Number.isFinite(targetC)) return null;
  return {
    timeS: curve.tc,
    standardUncertaintyS,
    slopeCPerS: curve.s,
    rateFallPerS: curve.k,
    noiseC: Math.sqrt(noiseSquared),
    autocorrelation,
    readings: count,
  };
}
