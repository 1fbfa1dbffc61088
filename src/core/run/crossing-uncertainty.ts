import { type FittedCurve, TUKEY } from './fit-crossing.ts';
import { curveInformation } from './heating-curve.ts';
import { rippleVariance } from './ripple-variance.ts';
import { solveThree } from './solve-three.ts';
import { studentFactor } from './student-factor.ts';

export interface CrossingUncertainty {
  readonly standardUncertaintyS: number;
  /** Standard deviation of the readings about the curve, spikes left out, °C. */
  readonly noiseC: number;
  /** Lag-one autocorrelation of what the curve leaves over. */
  readonly autocorrelation: number;
}

/**
 * Standard uncertainty of a fitted crossing: sandwich of the M-estimate, n/(n−3)·mean(ψ²)/mean(ψ′)² · (JᵀJ)⁻¹, never below
 * q/√12 for readings in steps of q, widened for autocorrelated noise by √((1+ρ)/(1−ρ)) and for few readings by Student's t.
 * @returns null where the readings do not gather about the curve.
 */
export function crossingUncertainty(fit: FittedCurve): CrossingUncertainty | null {
  const { residuals, scaleC, floorC, byTc, byS, byK } = fit;
  const count = residuals.length;
  let psiSquared = 0;
  let psiSlope = 0;
  let lagged = 0;
  let before = 0;
  const psi = new Float64Array(count);
  const reach = 1 / (TUKEY * scaleC);
  for (let i = 0; i < count; i++) {
    const r = residuals[i]!;
    const u = r * reach;
    const v = 1 - u * u;
    let now = 0;
    if (v > 0) {
      now = r * v * v;
      psiSlope += v * (1 - 5 * u * u);
    }
    psi[i] = now;
    psiSquared += now * now;
    lagged += now * before;
    before = now;
  }
  if (psiSlope < 0.3 * count) return null;
  const row = solveThree(curveInformation(fit), [1, 0, 0]);
  if (row === null) return null;
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
  const [perNoise, rowB, rowC] = row;
  const swinging = rippleVariance(psi, () => {
    const influence = new Float64Array(count);
    for (let i = 0; i < count; i++) influence[i] = perNoise * byTc[i]! + rowB * byS[i]! + rowC * byK[i]!;
    return influence;
  });
  const white = Math.max(noiseSquared * student * student, floorC * floorC) * perNoise;
  const correction = ((count / degrees) * student * student) / (psiSlope / count) ** 2;
  const variance =
    swinging === null ? white * widening : Math.max(floorC * floorC * perNoise, swinging * correction);
  const standardUncertaintyS = Math.sqrt(variance);
  if (!Number.isFinite(standardUncertaintyS)) return null;
  return { standardUncertaintyS, noiseC: Math.sqrt(noiseSquared), autocorrelation };
}
