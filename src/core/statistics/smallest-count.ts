/**
 * Smallest whole number from `least` to `most` for which `enough` is true, if it stays true above it; null if
 * none. By halving, for counts of runs where each check costs a quantile.
 */
export function smallestCount(
  least: number,
  most: number,
  enough: (count: number) => boolean,
): number | null {
  if (enough(least)) return least;
  if (!enough(most)) return null;
  let tooFew = least;
  let fits = most;
  while (fits - tooFew > 1) {
    const middle = Math.floor((tooFew + fits) / 2);
    if (enough(middle)) fits = middle;
    else tooFew = middle;
  }
  return fits;
}
