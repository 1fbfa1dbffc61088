import type { ReadingValue } from '../reading/StreamEvent.ts';
import type { RunTrace } from './RecordsState.ts';

/** A reading further away than this from the cursor is not shown as its value, s. */
const FURTHEST_S = 2;

/** The reading nearest to a time (s on the trace's own clock); null when none is within 2 s. */
export function readingAt(trace: RunTrace, timeS: number): RunTrace['readings'][number] | null {
  const { readings } = trace;
  let [low, high] = [0, readings.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((readings[middle]?.timeS ?? 0) <= timeS) low = middle;
    else high = middle;
  }
  const [before, after] = [readings[low], readings[high]];
  if (before === undefined || after === undefined) return null;
  const nearest = Math.abs(before.timeS - timeS) <= Math.abs(after.timeS - timeS) ? before : after;
  return Math.abs(nearest.timeS - timeS) <= FURTHEST_S ? nearest : null;
}

/** One channel's value at a time; null when nothing was read near it. */
export function valueAt(trace: RunTrace, channel: number, timeS: number): ReadingValue | null {
  return readingAt(trace, timeS)?.values[channel] ?? null;
}
