/** Longer records are left to the plain widening, which is wider. */
const MOST_READINGS = 600;
/** Autocorrelation as negative as this somewhere is a ripple, not a drifting noise. Judgement, no source. */
const SWING = -0.52;

/**
 * Variance of an estimate Σ hᵢ·rᵢ whose residuals swing (mains or heater ripple, aliased by sampling): Σᵢⱼ hᵢ·hⱼ·γ(i−j), with the
 * autocovariances of the residuals themselves up to a third of the record, tapered (Newey and West 1987; from memory).
 * A ripple mostly averages out, which 1+ρ over 1−ρ does not know. The influence h is worked out only where it is needed.
 * @returns null where the residuals do not swing or the record is short or very long.
 */
export function rippleVariance(residuals: Float64Array, influenceOf: () => Float64Array): number | null {
  const count = residuals.length;
  if (count < 60 || count > MOST_READINGS) return null;
  const lags = Math.floor(count / 3);
  const square = laggedProduct(residuals, 0);
  if (!(square > 0)) return null;
  const covariances = new Float64Array(lags + 1);
  let lowest = 0;
  for (let lag = 1; lag <= lags; lag++) {
    const covariance = laggedProduct(residuals, lag);
    covariances[lag] = covariance;
    if (covariance < lowest) lowest = covariance;
  }
  if (lowest >= SWING * square) return null;
  const influence = influenceOf();
  let variance = (laggedProduct(influence, 0) * square) / count;
  for (let lag = 1; lag <= lags; lag++)
    variance += 2 * (1 - lag / (lags + 1)) * (covariances[lag]! / count) * laggedProduct(influence, lag);
  return variance > 0 ? variance : null;
}

function laggedProduct(values: Float64Array, lag: number): number {
  let sum = 0;
  for (let i = lag; i < values.length; i++) sum += values[i]! * values[i - lag]!;
  return sum;
}
