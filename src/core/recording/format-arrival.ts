/**
 * Arrival time as decimal seconds with all six decimals, made from whole microseconds without rounding:
 * 12500001 → `12.500001`. Throws a RangeError for anything that is no whole number.
 */
export function formatArrival(arrivedUs: number): string {
  if (!Number.isSafeInteger(arrivedUs)) {
    throw new RangeError(`arrivedUs must be a whole number of microseconds, came ${arrivedUs}`);
  }
  if (arrivedUs < 0) return `-${formatArrival(-arrivedUs)}`;
  const digits = arrivedUs < 1_000_000 ? String(arrivedUs + 1_000_000) : String(arrivedUs);
  const cut = digits.length - 6;
  return `${arrivedUs < 1_000_000 ? '0' : digits.slice(0, cut)}.${digits.slice(cut)}`;
}
