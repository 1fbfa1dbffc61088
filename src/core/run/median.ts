/** Up to this many values are sorted by insertion, which needs no copy into a typed array. */
const FEW = 24;

/** Middle value (mean of the two middle ones); null of nothing. Does not alter its input; expects numbers only. */
export function median(values: ArrayLike<number>): number | null {
  const count = values.length;
  if (count === 0) return null;
  return count <= FEW ? middleOfFew(values) : medianInPlace(Float64Array.from(values));
}

/** Middle value of an array that may be put out of order; NaN of nothing. */
export function medianInPlace(work: Float64Array): number {
  const count = work.length;
  if (count === 0) return Number.NaN;
  const half = count >>> 1;
  const upper = select(work, half);
  if (count % 2 === 1) return upper;
  // Everything left of the selected place is smaller or equal: the lower middle value is its largest.
  let lower = work[0]!;
  for (let i = 1; i < half; i++) if (work[i]! > lower) lower = work[i]!;
  return (lower + upper) / 2;
}

function middleOfFew(values: ArrayLike<number>): number {
  const count = values.length;
  const sorted: number[] = [];
  for (let i = 0; i < count; i++) {
    const value = values[i]!;
    let at = i;
    while (at > 0 && sorted[at - 1]! > value) {
      sorted[at] = sorted[at - 1]!;
      at--;
    }
    sorted[at] = value;
  }
  const half = count >>> 1;
  return count % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
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
