/** Middle value (mean of the two middle ones); null of nothing. Does not alter its input. */
export function median(values: ArrayLike<number>): number | null {
  const count = values.length;
  if (count === 0) return null;
  const sorted = Float64Array.from(values).sort();
  const half = count >>> 1;
  return count % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
