import { closest } from 'fastest-levenshtein';
import { crossingProbes } from '../../core/probe/crossing-probes.ts';
import { headProbes } from '../../core/probe/head-probes.ts';
import type { RecordingHead } from '../../core/recording/RecordingEntry.ts';
import { type TrialOutcome, trialOutcome } from '../../core/result/trial-outcome.ts';
import type { Store, StoredTrial } from '../../core/store/Store.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import type { TrialRun } from '../../core/trial/TrialResult.ts';
import { OptionError } from '../options/OptionError.ts';
import { type DwellOptions, outcomeSettings } from '../options/outcome-settings.ts';
import { runRules } from '../options/run-rules.ts';

export interface StoredOutcome {
  readonly trial: StoredTrial;
  readonly head: RecordingHead | null;
  readonly runs: readonly (TrialRun & { readonly recordingId: string })[];
  readonly outcome: TrialOutcome;
}

/** The trial of this id, or of the only id that begins so; else a refusal that names the nearest. */
export function findTrial(store: Store, id: string): StoredTrial {
  const trials = store.trials();
  const found = trials.filter((trial) => trial.trialId === id);
  const begun = found.length > 0 ? found : trials.filter((trial) => trial.trialId.startsWith(id));
  if (begun.length === 1) return begun[0]!;
  const ids = trials.map((trial) => trial.trialId);
  throw new OptionError(
    begun.length === 0
      ? `no trial "${neutralise(id)}" in the store`
      : `${begun.length} trials begin with "${neutralise(id)}"`,
    ids.length === 0
      ? 'Run one first: dwellwright trial, or dwellwright demo'
      : `Did you mean ${closest(id, ids)}? List them: dwellwright trials`,
    'trial-unknown',
  );
}

/** A trial of the store with its runs, decisions, figures and dwell. */
export function storedOutcome(store: Store, id: string, options: DwellOptions): StoredOutcome {
  const trial = findTrial(store, id);
  const firstRecording = trial.recordingIds[0];
  const head = firstRecording === undefined ? null : (store.recording(firstRecording)?.head ?? null);
  const press = store.presses().find((one) => one.name === trial.pressName);
  const runs = store.trialRuns(trial.trialId);
  const rules = runRules({}, { targetC: head?.targetC, holdS: head?.holdS });
  const probes = trial.recordingIds.flatMap((recordingId) => {
    const own = store.recording(recordingId)?.head;
    const results = runs.filter((run) => run.recordingId === recordingId).map((run) => run.result);
    return own === undefined ? [] : crossingProbes(results, headProbes(own));
  });
  return { trial, head, runs, outcome: trialOutcome(runs, outcomeSettings(options, rules, press, probes)) };
}
