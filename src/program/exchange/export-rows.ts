import type { RunRow } from '../../core/exchange/run-fields.ts';
import type { TrialRow } from '../../core/exchange/trial-fields.ts';
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
    for (const [index, run] of runs.entries())
      yield { trial, run, runInTrial: index + 1, leftOut: outcome.leftOut[index] ?? null };
  }
}
