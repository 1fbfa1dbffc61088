/**
 * Lag-1 autocorrelation about the mean: Σ(yᵢ − m)(yᵢ₊₁ − m) ÷ Σ(yᵢ − m)². 0 where all values are equal.
 * Source: NIST StRD, univariate (same definition as the certified figures).
 */
export function lag1Autocorrelation(values: ArrayLike<number>): number {
  const n = values.length;
  let sum = 0;
  for (let i = 0; i < n; i += 1) sum += values[i]!;
  const mean = n === 0 ? 0 : sum / n;
  let [squares, products] = [0, 0];
  for (let i = 0; i < n; i += 1) {
    const off = values[i]! - mean;
    squares += off * off;
    if (i + 1 < n) products += off * (values[i + 1]! - mean);
  }
  return squares === 0 ? 0 : products / squares;
}
