import type { Samples } from '../run/collect-samples.ts';

/**
 * Steepest rise, °C/s: the largest slope of a straight line by least squares through the readings of any `windowS`, and
 * the middle of that window. 0 where no window holds three readings.
 */
export function largestRate(
  { timesS, valuesC }: Samples,
  windowS: number,
): { readonly rateCPerS: number; readonly atS: number } {
  let best = { rateCPerS: 0, atS: timesS[0] ?? 0 };
  let from = 0;
  for (let end = 0; end < timesS.length; end++) {
    while (timesS[end]! - timesS[from]! > windowS) from++;
    const n = end - from + 1;
    if (n < 3 || timesS[end]! - timesS[from]! < windowS / 2) continue;
    let x1 = 0;
    let x2 = 0;
    let y1 = 0;
    let xy = 0;
    for (let i = from; i <= end; i++) {
      const x = timesS[i]! - timesS[from]!;
      const y = valuesC[i]! - valuesC[from]!;
      x1 += x;
      x2 += x * x;
      y1 += y;
      xy += x * y;
    }
    const rateCPerS = (xy - (x1 * y1) / n) / (x2 - (x1 * x1) / n);
    if (rateCPerS > best.rateCPerS) best = { rateCPerS, atS: (timesS[from]! + timesS[end]!) / 2 };
  }
  return best;
}
