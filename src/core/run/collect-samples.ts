import type { TraceBuffer } from './TraceBuffer.ts';

/** Valid readings of one channel: times in s and temperatures in °C, oldest first. */
export interface Samples {
  readonly timesS: Float64Array;
  readonly valuesC: Float64Array;
}

/** Readings of a channel with fromS ≤ time ≤ toS that hold a temperature; faults and missing values are left out. */
export function collectSamples(trace: TraceBuffer, channel: number, fromS: number, toS: number): Samples {
  const first = trace.indexFrom(fromS);
  const most = Math.max(0, trace.indexAfter(toS) - first);
  const timesS = new Float64Array(most);
  const valuesC = new Float64Array(most);
  let count = 0;
  for (let index = first; index < trace.length; index++) {
    const timeS = trace.timeAt(index);
    if (timeS > toS) break;
    const valueC = trace.valueAt(channel, index);
    if (!Number.isFinite(valueC)) continue;
    timesS[count] = timeS;
    valuesC[count++] = valueC;
  }
  return { timesS: timesS.subarray(0, count), valuesC: valuesC.subarray(0, count) };
}
