import type { ReadingColumns } from '../reading/ReadingColumns.ts';
import type { StreamEvent } from '../reading/StreamEvent.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { RunEvent, RunState } from './RunEvent.ts';
import type { RunRules } from './RunResult.ts';
import type { TraceRoom } from './TraceBuffer.ts';

export interface RunTracker {
  /** Takes the next event of the stream; returns what it means for the run, in the order it happened. */
  accept(event: StreamEvent): readonly RunEvent[];
  /** The same as `accept` with the reading at a row of columns, at less cost. */
  acceptRow(columns: ReadingColumns, row: number): readonly RunEvent[];
  /** No more events: finishes an open run. */
  finish(): readonly RunEvent[];
  readonly state: RunState;
}

export interface RunTrackerOptions {
  readonly rules: RunRules;
  /** What each channel is laid on, channel 1 first; none given means that channel 1 is the bond line. */
  readonly roles: readonly ChannelRole[];
  /** Step of the reader's values in °C where known; else the smallest difference seen. */
  readonly resolutionC?: number | null;
  /** Room of a tracker that is not used any more. */
  readonly room?: TraceRoom;
}
