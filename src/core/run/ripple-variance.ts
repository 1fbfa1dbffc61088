/** Longer records are left to the plain widening, which is wider. */
const MOST_READINGS = 600;
/** Autocorrelation as negative as this somewhere is a ripple, not a drifting noise. Judgement, no source. */
const SWING = -0.52;

/**
 * Variance of an estimate Σ hᵢ·rᵢ whose residuals swing (mains or heater ripple, aliased by sampling): Σᵢⱼ hᵢ·hⱼ·γ(i−j), with the
 * autocovariances of the residuals themselves up to a third of the record, tapered (Newey and West 1987; from memory).
 * A ripple mostly averages out, which 1+ρ over 1−ρ does not know.
 * @returns null where the residuals do not swing or the record is short or very long.
 */
export function rippleVariance(residuals: Float64Array, influence: Float64Array): number | null {
  const count = residuals.length;
  if (count < 60 || count > MOST_READINGS) return null;
  const lags = Math.floor(count / 3);
  let square = 0;
  for (let i = 0; i < count; i++) square += residuals[i]! ** 2;
  if (!(square > 0)) return null;
  let lowest = 0;
  let variance = (products(influence, 0) * square) / count;
  for (let lag = 1; lag <= lags; lag++) {
    const covariance = products(residuals, lag);
    lowest = Math.min(lowest, covariance / square);
    variance += 2 * (1 - lag / (lags + 1)) * (covariance / count) * products(influence, lag);
  }
  return lowest < SWING && variance > 0 ? variance : null;
}

function products(values: Float64Array, lag: number): number {
  let sum = 0;
  for (let i = lag; i < values.length; i++) sum += values[i]! * values[i - lag]!;
  return sum;
}
