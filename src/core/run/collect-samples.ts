import type { TraceBuffer } from './TraceBuffer.ts';

/** Valid readings of one channel: times in s and temperatures in °C, oldest first. To be read only, and before the next reading. */
export interface Samples {
  readonly timesS: Float64Array;
  readonly valuesC: Float64Array;
}

/** Readings of a channel with fromS ≤ time ≤ toS that hold a temperature; faults and missing values are left out. */
export function collectSamples(trace: TraceBuffer, channel: number, fromS: number, toS: number): Samples {
  const first = trace.indexFrom(fromS);
  return trace.valid(channel, first, Math.max(0, trace.indexAfter(toS) - first));
}

/** The samples with fromS ≤ time ≤ toS, without copying. */
export function samplesBetween({ timesS, valuesC }: Samples, fromS: number, toS: number): Samples {
  const first = firstFrom(timesS, fromS);
  let end = firstFrom(timesS, toS);
  while (end < timesS.length && timesS[end]! <= toS) end++;
  return { timesS: timesS.subarray(first, end), valuesC: valuesC.subarray(first, end) };
}

function firstFrom(timesS: Float64Array, fromS: number): number {
  let low = 0;
  let high = timesS.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (timesS[middle]! < fromS) low = middle + 1;
    else high = middle;
  }
  return low;
}
