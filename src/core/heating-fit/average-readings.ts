export interface Readings {
  readonly timesS: Float64Array;
  readonly valuesC: Float64Array;
}

export interface AveragedReadings extends Readings {
  /** Readings behind each mean. */
  readonly counts: Float64Array;
}

/**
 * Means of neighbouring readings over equal spans of time, `most` of them at the most: a smooth curve loses nothing by
 * it and a fit costs less. Readings marked in `leftOut` do not enter. Fewer readings than `most` come back as they are.
 */
export function averageReadings(
  { timesS, valuesC }: Readings,
  most: number,
  leftOut: Uint8Array | null = null,
): AveragedReadings {
  const n = timesS.length;
  const spanS = n < 2 ? 0 : timesS[n - 1]! - timesS[0]!;
  const asIs = n <= most || spanS <= 0;
  const widthS = spanS / most;
  const times = new Float64Array(asIs ? n : most + 1);
  const values = new Float64Array(times.length);
  const counts = new Float64Array(times.length);
  let at = -1;
  let bin = -1;
  for (let i = 0; i < n; i += 1) {
    if (leftOut !== null && leftOut[i] === 1) continue;
    const here = asIs ? i : Math.min(most - 1, Math.floor((timesS[i]! - timesS[0]!) / widthS));
    if (here !== bin) {
      bin = here;
      at += 1;
    }
    times[at]! += timesS[i]!;
    values[at]! += valuesC[i]!;
    counts[at]! += 1;
  }
  for (let i = 0; i <= at; i += 1) {
    times[i]! /= counts[i]!;
    values[i]! /= counts[i]!;
  }
  const upTo = at + 1;
  return {
    timesS: times.subarray(0, upTo),
    valuesC: values.subarray(0, upTo),
    counts: counts.subarray(0, upTo),
  };
}
