import type { ClockComparison, WireCounts } from '../reading/StreamEvent.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { ReaderIdentity } from '../wire/WireEvent.ts';

/** A temperature at a time; null where a reading is missing or faulted, so that no line bridges it. */
export interface TracePoint {
  readonly timeS: number;
  readonly temperatureC: number | null;
}

export interface TraceChannel {
  /** 1, 2, … as the reader counts. */
  readonly channel: number;
  readonly role: ChannelRole;
  readonly points: readonly TracePoint[];
}

/** A whole recording's channels, and what it says of the reader that sent them. */
export interface RecordingTrace {
  /** Times from the recording's first reading. */
  readonly channels: readonly TraceChannel[];
  readonly identity: ReaderIdentity | null;
  readonly counts: WireCounts;
  readonly clock: ClockComparison;
  readonly recognised: string | null;
}

/** One run's channels, times from press closed. */
export interface RunTrace {
  readonly label: string;
  readonly channels: readonly TraceChannel[];
}
