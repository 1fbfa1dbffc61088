import { type Curve, curveDerivatives, normalEquations } from './heating-curve.ts';
import { rippleVariance } from './ripple-variance.ts';
import { solveSymmetric } from './solve-symmetric.ts';
import { studentFactor } from './student-factor.ts';

/** Tukey's biweight with 95 % efficiency at normal noise (Beaton and Tukey 1974; from memory). */
export const TUKEY = 4.685;

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

/** Sandwich of the M-estimate: n/(n−3)·mean(ψ²)/mean(ψ′)² · (JᵀJ)⁻¹, then the widenings. */
export function crossingUncertainty(
  timesS: Float64Array,
  residuals: Float64Array,
  scaleC: number,
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
  const inverse = solved.inverse();
  const influence = timesS.map((timeS) => {
    const [a, b, c] = curveDerivatives(timeS, curve);
    return inverse[0]![0]! * a + inverse[0]![1]! * b + inverse[0]![2]! * c;
  });
  const white = Math.max(noiseSquared * student * student, floorC * floorC) * inverse[0]![0]!;
  const correction = ((count / degrees) * student * student) / (psiSlope / count) ** 2;
  const swinging = rippleVariance(psi, influence);
  const variance =
    swinging === null ? white * widening : Math.max(floorC * floorC * inverse[0]![0]!, swinging * correction);
  const standardUncertaintyS = Math.sqrt(variance);
  if (!Number.isFinite(standardUncertaintyS)) return null;
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
