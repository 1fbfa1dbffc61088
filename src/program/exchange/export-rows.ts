import { type ProbeRow, probeRows } from '../../core/exchange/probe-fields.ts';
import type { RunRow } from '../../core/exchange/run-fields.ts';
import type { TrialRow } from '../../core/exchange/trial-fields.ts';
import { headProbes } from '../../core/probe/head-probes.ts';
import type { RecordingHead } from '../../core/recording/RecordingEntry.ts';
import type { Store, StoredTrial } from '../../core/store/Store.ts';
import { storedOutcome } from '../trials/stored-outcome.ts';

/** Trials with their figures, as `trials` shows them. */
export function* trialRows(store: Store, trials: readonly StoredTrial[]): Generator<TrialRow> {
  for (const trial of trials) yield { trial, outcome: storedOutcome(store, trial.trialId, {}).outcome };
}

/** Runs of trials, with whether each counts. */
export function* runRows(store: Store, trials: readonly StoredTrial[]): Generator<RunRow> {
  for (const trial of trials) {
    const { runs, outcome } = storedOutcome(store, trial.trialId, {});
    const heads = new Map<string, RecordingHead | null>();
    for (const [index, run] of runs.entries()) {
      const { recordingId } = run;
      if (!heads.has(recordingId)) heads.set(recordingId, store.recording(recordingId)?.head ?? null);
      const head = heads.get(recordingId) ?? null;
      yield {
        trial,
        run,
        runInTrial: index + 1,
        leftOut: outcome.leftOut[index] ?? null,
        reference: outcome.reference.soaks[index] ?? null,
        head,
        probes: head === null ? [] : headProbes(head),
      };
    }
  }
}

/** Every version of every probe. */
export function* allProbeRows(store: Store): Generator<ProbeRow> {
  for (const { name } of store.probes()) yield* probeRows(store.probeHistory(name));
}
