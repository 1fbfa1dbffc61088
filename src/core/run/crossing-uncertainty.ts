import { findRipple, laggedProduct } from './find-ripple.ts';
import { type FittedCurve, TUKEY } from './fit-crossing.ts';
import { curveInformation } from './heating-curve.ts';
import { solveThree, type Three } from './solve-three.ts';
import { studentFactor } from './student-factor.ts';

export interface CrossingUncertainty {
  readonly standardUncertaintyS: number;
  /** Standard deviation of the readings about the curve, spikes left out, °C. */
  readonly noiseC: number;
  /** Lag-one autocorrelation of what the curve (and a ripple) leaves over. */
  readonly autocorrelation: number;
}

/**
 * Standard uncertainty of a fitted crossing: sandwich of the M-estimate, n/(n−3)·mean(ψ²)/mean(ψ′)² · (JᵀJ)⁻¹, never below
 * q/√12 for readings in steps of q, widened for autocorrelated noise by √((1+ρ)/(1−ρ)) and for few readings by Student's t.
 * A ripple of one frequency is taken out of the residuals first, for it mostly averages out, which (1+ρ)/(1−ρ) does not
 * know; what it does to the crossing, amplitude²/2 · |Σ h·exp(iωt)|² with h = ∂tc/∂reading and any phase, is added.
 * @returns null where the readings do not gather about the curve.
 */
export function crossingUncertainty(fit: FittedCurve): CrossingUncertainty | null {
  const { residuals, scaleC, floorC, timesS } = fit;
  const count = residuals.length;
  let psiSlope = 0;
  const psi = new Float64Array(count);
  const reach = 1 / (TUKEY * scaleC);
  for (let i = 0; i < count; i++) {
    const r = residuals[i]!;
    const u = r * reach;
    const v = 1 - u * u;
    if (v <= 0) continue;
    psi[i] = r * v * v;
    psiSlope += v * (1 - 5 * u * u);
  }
  if (psiSlope < 0.3 * count) return null;
  const row = solveThree(curveInformation(fit), [1, 0, 0]);
  if (row === null) return null;
  const ripple = findRipple(timesS, psi);
  const noise = ripple?.left ?? psi;
  const psiSquared = laggedProduct(noise, 0);
  const degrees = Math.max(count - (ripple === null ? 3 : 6), 1);
  const raw = psiSquared > 0 ? laggedProduct(noise, 1) / psiSquared : 0;
  // The fit takes some of the correlation away (made good with enough readings); under fifteen readings it cannot be told.
  const made = count >= 60 ? (raw + 4 / count) / (1 - 8 / count) : count >= 15 ? raw : 0;
  const autocorrelation = Math.min(0.95, Math.max(0, made));
  const widening = (1 + autocorrelation) / (1 - autocorrelation);
  // A curve with three free figures takes three correlated stretches out of the scatter, not three readings.
  const left = Math.max(count - 3 * widening, degrees / 2);
  const perSlope = (psiSlope / count) ** 2;
  const noiseSquared = psiSquared / left / perSlope;
  // Scatter and correlation are both estimated from the same stretches: where they hang together, half as many count.
  const stretches = degrees / (widening > 1.5 ? 2 * widening : widening);
  const student = studentFactor(Math.max(1, stretches));
  const white = Math.max(noiseSquared * student * student, floorC * floorC) * row[0] * widening;
  const swing = ripple === null ? 0 : swingOfCrossing(fit, row, ripple.radPerS) * ripple.amplitudeC ** 2;
  const standardUncertaintyS = Math.sqrt(white + swing / (2 * perSlope));
  if (!Number.isFinite(standardUncertaintyS)) return null;
  return { standardUncertaintyS, noiseC: Math.sqrt(noiseSquared), autocorrelation };
}

/** |Σ h·exp(iωt)|²: what a ripple of 1 °C does to the crossing, s², over all phases the largest. */
function swingOfCrossing({ timesS, byTc, byS, byK }: FittedCurve, [a, b, c]: Three, radPerS: number): number {
  let real = 0;
  let imaginary = 0;
  for (let i = 0; i < timesS.length; i++) {
    const h = a * byTc[i]! + b * byS[i]! + c * byK[i]!;
    const angle = radPerS * (timesS[i]! - timesS[0]!);
    real += h * Math.cos(angle);
    imaginary += h * Math.sin(angle);
  }
  return real * real + imaginary * imaginary;
}
