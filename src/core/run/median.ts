/** Middle value (mean of the two middle ones); null of nothing. Does not alter its input; expects numbers only. */
export function median(values: ArrayLike<number>): number | null {
  const count = values.length;
  if (count === 0) return null;
  const work = Float64Array.from(values);
  const half = count >>> 1;
  const upper = select(work, half);
  if (count % 2 === 1) return upper;
  // Everything left of the selected place is smaller or equal: the lower middle value is its largest.
  let lower = work[0]!;
  for (let i = 1; i < half; i++) if (work[i]! > lower) lower = work[i]!;
  return (lower + upper) / 2;
}

/** Puts the k-th smallest value in its place (Hoare's selection) and returns it. */
function select(work: Float64Array, k: number): number {
  let left = 0;
  let right = work.length - 1;
  while (left < right) {
    const pivot = work[(left + right) >>> 1]!;
    let i = left;
    let j = right;
    while (i <= j) {
      while (work[i]! < pivot) i++;
      while (work[j]! > pivot) j--;
      if (i > j) break;
      const swap = work[i]!;
      work[i++] = work[j]!;
      work[j--] = swap;
    }
    if (k <= j) right = j;
    else if (k >= i) left = i;
    else break;
  }
  return work[k]!;
}
