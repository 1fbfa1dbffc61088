import { median } from './median.ts';
import type { TraceBuffer } from './TraceBuffer.ts';

/** Usual time between readings before a time: median of the last twenty intervals, s; 1 s where there are none. */
export function intervalBefore(trace: TraceBuffer, timeS: number): number {
  const end = trace.indexFrom(timeS);
  const intervals: number[] = [];
  for (let index = Math.max(1, end - 20); index < end; index++)
    intervals.push(trace.timeAt(index) - trace.timeAt(index - 1));
  return median(intervals) ?? 1;
}
