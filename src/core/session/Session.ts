import type { ProbeCorrection } from '../probe/probe-correction.ts';
import type { ClockComparison, Reading, WireCounts } from '../reading/StreamEvent.ts';
import type { ChannelRole, RecordingEntry } from '../recording/RecordingEntry.ts';
import type { RunEvent, RunState } from '../run/RunEvent.ts';
import type { RunResult, RunRules } from '../run/RunResult.ts';
import type { LineDecoder, ReaderIdentity } from '../wire/WireEvent.ts';

/**
 * The one pipeline: entries (received lines, operator marks, host events) in, run events out.
 * A live port, a replayed recording, an imported log and the simulated reader all go through it,
 * so the same entries give the same results to the last digit.
 */
export interface SessionConfig {
  readonly decoder: LineDecoder;
  readonly roles: readonly ChannelRole[];
  readonly rules: RunRules;
  /** By channel, channel 1 first: what turns readings into true temperatures; null where none. */
  readonly probeCorrections?: readonly (ProbeCorrection | null)[];
}

export interface Session {
  /** Takes the next entry of the recording; returns what the run tracker reports because of it. */
  accept(entry: RecordingEntry): readonly RunEvent[];
  /** No more entries: finishes an open run. */
  finish(): readonly RunEvent[];
  readonly state: SessionState;
  /** As in `state`, at no cost. */
  readonly latestReading: Reading | null;
}

export interface SessionState {
  readonly run: RunState;
  /** Runs finished so far. */
  readonly results: readonly RunResult[];
  readonly latestReading: Reading | null;
  readonly counts: WireCounts;
  readonly clock: ClockComparison;
  readonly identity: ReaderIdentity | null;
  readonly recognised: string | null;
  /** Set when the reader's lines cannot be used without an option; says which. */
  readonly refusal: { readonly problem: string; readonly detail: string } | null;
}
