import type { RecordingEntry } from '../recording/RecordingEntry.ts';
import type { RunResult } from '../run/RunResult.ts';
import { createSession } from './create-session.ts';
import { noRunResult } from './no-run-result.ts';
import type { SessionConfig, SessionState } from './Session.ts';

export interface Analysis {
  /** At least one: a recording without a closing gives an unusable run that says so. */
  readonly results: readonly RunResult[];
  readonly state: SessionState;
}

/** Sends a whole recording through the pipeline: the path of every replay. */
export function analyseEntries(entries: Iterable<RecordingEntry>, config: SessionConfig): Analysis {
  const session = createSession(config);
  for (const entry of entries) session.accept(entry);
  session.finish();
  const { state } = session;
  const found = state.results.length > 0;
  return {
    results: found
      ? [...state.results]
      : [noRunResult(state.counts.readings, state.latestReading?.timeS ?? 0)],
    state,
  };
}
