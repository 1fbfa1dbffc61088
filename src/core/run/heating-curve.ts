/** A heating curve of first order written about its crossing of the target. */
export interface Curve {
  readonly tc: number;
  readonly s: number;
  readonly k: number;
}

/** T at x seconds after the crossing. */
export function heatingCurve(x: number, targetC: number, s: number, k: number): number {
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

/** Sums of the Gauss–Newton step: JᵀWJ and JᵀWr for (tc, s, k). */
export function normalEquations(
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

/** Derivatives of the curve by (tc, s, k) at a time. */
export function curveDerivatives(timeS: number, { tc, s, k }: Curve): readonly [number, number, number] {
  const x = timeS - tc;
  const z = k * x;
  return [-s * Math.exp(-z), x * phi(z), s * x * x * phiSlope(z)];
}
