import type { ClockComparison, StreamEvent } from '../reading/StreamEvent.ts';

/** Version of what turns lines into readings. Raise it when any decoded figure may change: kept traces are made anew. */
export const DECODE_VERSION = 1;

/**
 * A recording's readings as decoded, before any calibration or rule: can be kept beside the recording and analysed again
 * by other rules without reading its lines. Arrays hold one element per reading, channels one after the other per reading.
 */
export interface DecodedTrace {
  readonly channels: number;
  readonly timesS: Float64Array;
  readonly arrivedUs: Float64Array;
  /** °C; NaN where the reading holds none. Never reaches statistics: `kinds` says what it is. */
  readonly temperaturesC: Float64Array;
  /** 0 a temperature, 1 missing, from 2 on a fault (index in `TRACE_FAULTS` plus 2). */
  readonly kinds: Uint8Array;
  /** Clock comparison at each checkpoint (every 64th reading), the last one at the end of the recording. */
  readonly clocks: readonly ClockComparison[];
  /** Everything that is no reading, with the number of readings before it. */
  readonly others: readonly { readonly readingsBefore: number; readonly event: StreamEvent }[];
}

export const TRACE_FAULTS = [
  'open-circuit',
  'short-to-ground',
  'short-to-supply',
  'over-range',
  'cold-junction',
  'unspecified',
] as const;
