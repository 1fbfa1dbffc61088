import type { ChannelFault } from '../wire/WireEvent.ts';

/** Faults in the order of their codes in `kinds`; new ones only at the end, since kept traces hold the codes. */
export const CHANNEL_FAULTS: readonly ChannelFault[] = Object.freeze([
  'open-circuit',
  'short-to-ground',
  'short-to-supply',
  'over-range',
  'cold-junction',
  'unspecified',
]);

/** Many readings in typed arrays: one element of `timesS` per reading, of the others one per channel and reading, channel 1 first. */
export interface ReadingColumns {
  readonly channels: number;
  /** Seconds from the recording's first reading. */
  readonly timesS: Float64Array;
  /** °C; NaN where the reading holds none. Never reaches statistics: `kinds` says what it is. */
  readonly temperaturesC: Float64Array;
  /** 0 a temperature, 1 missing, from 2 on a fault (index in `CHANNEL_FAULTS` plus 2). */
  readonly kinds: Uint8Array;
}
