import type { ReadingColumns } from '../reading/ReadingColumns.ts';
import type { ClockComparison, StreamEvent } from '../reading/StreamEvent.ts';

/** Version of what turns lines into readings. Raise it when any decoded figure may change: kept traces are made anew. */
export const DECODE_VERSION = 2;

/**
 * A recording's readings as decoded, before any calibration or rule: can be kept beside the recording and analysed again
 * by other rules without reading its lines.
 */
export interface DecodedTrace extends ReadingColumns {
  readonly arrivedUs: Float64Array;
  /** Clock comparison at each checkpoint (every 64th reading), the last one at the end of the recording. */
  readonly clocks: readonly ClockComparison[];
  /** Everything that is no reading, with the number of readings before it. */
  readonly others: readonly { readonly readingsBefore: number; readonly event: StreamEvent }[];
}
