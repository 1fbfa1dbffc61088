import type { Samples } from '../run/collect-samples.ts';

/** A smoothed trace at the readings' own times: value in °C and rate in °C/s. */
export interface SmoothTrace {
  readonly timesS: Float64Array;
  readonly valuesC: Float64Array;
  readonly ratesCPerS: Float64Array;
}

/**
 * Parabola by least squares through the readings within ± `halfWindowS` of each reading: its value and slope there
 * (Savitzky and Golay 1964, from memory; here by time, so that lost readings do no harm). Under four readings in the
 * window the reading itself stands.
 */
export function smoothTrace({ timesS, valuesC }: Samples, halfWindowS: number): SmoothTrace {
  const count = timesS.length;
  const smooth = new Float64Array(count);
  const rates = new Float64Array(count);
  let from = 0;
  let to = 0;
  for (let i = 0; i < count; i++) {
    const middleS = timesS[i]!;
    while (timesS[from]! < middleS - halfWindowS) from++;
    while (to < count && timesS[to]! <= middleS + halfWindowS) to++;
    const fit = parabolaAt(timesS, valuesC, from, to, middleS, valuesC[i]!);
    smooth[i] = fit.valueC;
    rates[i] = fit.rateCPerS;
  }
  return { timesS, valuesC: smooth, ratesCPerS: rates };
}

function parabolaAt(
  timesS: Float64Array,
  valuesC: Float64Array,
  from: number,
  to: number,
  middleS: number,
  ownC: number,
): { valueC: number; rateCPerS: number } {
  const n = to - from;
  if (n < 4) return { valueC: ownC, rateCPerS: 0 };
  const scale = Math.max(middleS - timesS[from]!, timesS[to - 1]! - middleS) || 1;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let s4 = 0;
  let y0 = 0;
  let y1 = 0;
  let y2 = 0;
  for (let k = from; k < to; k++) {
    const u = (timesS[k]! - middleS) / scale;
    const y = valuesC[k]! - ownC;
    const uu = u * u;
    s1 += u;
    s2 += uu;
    s3 += uu * u;
    s4 += uu * uu;
    y0 += y;
    y1 += y * u;
    y2 += y * uu;
  }
  const minor0 = s2 * s4 - s3 * s3;
  const minor1 = s1 * s4 - s2 * s3;
  const minor2 = s1 * s3 - s2 * s2;
  const determinant = n * minor0 - s1 * minor1 + s2 * minor2;
  if (!(Math.abs(determinant) > 1e-12 * n * s2 * s4)) return { valueC: ownC + y0 / n, rateCPerS: 0 };
  const level = (y0 * minor0 - y1 * minor1 + y2 * minor2) / determinant;
  const slope = (-y0 * minor1 + y1 * (n * s4 - s2 * s2) - y2 * (n * s3 - s1 * s2)) / determinant;
  return { valueC: ownC + level, rateCPerS: slope / scale };
}
