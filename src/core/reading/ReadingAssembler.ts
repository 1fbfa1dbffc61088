import type { RecordingEntry } from '../recording/RecordingEntry.ts';
import type { LineDecoder, ReaderIdentity, ThermocoupleType } from '../wire/WireEvent.ts';
import type { ClockComparison, Reading, StreamEvent, WireCounts } from './StreamEvent.ts';

export interface ReadingAssembler {
  /** Next entry of the recording, in order of arrival; returns what it means. Never throws. */
  accept(entry: RecordingEntry): readonly StreamEvent[];
  /** No more entries: a link that is still away becomes a gap up to the last entry. */
  finish(): readonly StreamEvent[];
  /** Kept up to date in place. */
  readonly counts: WireCounts;
  readonly clock: ClockComparison;
  readonly latestReading: Reading | null;
  readonly identity: ReaderIdentity | null;
  readonly refusal: { readonly problem: string; readonly detail: string } | null;
  readonly recognised: string | null;
}

export interface ReadingAssemblerOptions {
  readonly decoder: LineDecoder;
  /** Types stated by the user, channel 1 first; the reader's own statement goes before. */
  readonly thermocoupleTypes?: readonly (ThermocoupleType | null)[];
}
