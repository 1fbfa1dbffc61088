/**
 * Runs test (Wald and Wolfowitz): stretches of equal sign about `middle`, less their expectation, in standard
 * deviations. Far below 0: values hang together; far above: they alternate. Values at `middle` count as above.
 * Expectation 2·n₁·n₂/(n₁ + n₂) + 1, variance 2·n₁·n₂·(2·n₁·n₂ − n)/(n²·(n − 1)). 0 where all lie on one side.
 * Source: NIST/SEMATECH e-Handbook, 1.3.5.13.
 */
export function runsZ(values: ArrayLike<number>, middle = 0): number {
  const n = values.length;
  let [above, stretches] = [0, 0];
  for (let i = 0; i < n; i += 1) {
    const up = values[i]! >= middle;
    if (up) above += 1;
    if (i === 0 || up !== values[i - 1]! >= middle) stretches += 1;
  }
  const twice = 2 * above * (n - above);
  if (twice === 0 || n < 2) return 0;
  const variance = (twice * (twice - n)) / (n * n * (n - 1));
  return variance <= 0 ? 0 : (stretches - (twice / n + 1)) / Math.sqrt(variance);
}
