import { OptionError } from '../options/OptionError.ts';
import { parseCount } from '../options/parse-count.ts';
import { changeInStore, type StoreOptions } from '../options/with-store.ts';
import { storedOutcome } from '../trials/stored-outcome.ts';
import { showTrial } from './trials.ts';

interface DecideOptions extends StoreOptions {
  readonly reason: string;
  readonly show: 'F' | 'C';
  readonly json?: boolean;
}

/** `set-aside TRIAL RUN --reason …` and `take-in TRIAL RUN --reason …`: the run stays, the decision is added. */
export function decide(name: 'set-aside' | 'take-in') {
  return async (trialId: string, runText: string, options: DecideOptions): Promise<void> => {
    const reason = options.reason.trim();
    if (reason === '')
      throw new OptionError(
        '--reason: came empty',
        'Say in a few words why, for example --reason "carrier was still warm"',
      );
    await changeInStore(options, (store) => {
      const { runs, trial } = storedOutcome(store, trialId, {});
      if (runs.length === 0) throw new OptionError('this trial has no run yet', 'Make a run first');
      const run = runs[parseCount(runText, 'run', { least: 1, most: runs.length }) - 1]!;
      if (name === 'take-in' && run.result.verdict === 'unusable') {
        throw new OptionError(
          'an unusable run never enters the mean',
          'Make another run instead',
          'run-unusable',
        );
      }
      store.decideRun({
        recordingId: run.recordingId,
        runNumber: run.result.runNumber,
        kind: name === 'set-aside' ? 'set-aside' : 'taken-in',
        reason,
        decidedAt: new Date().toISOString(),
      });
      showTrial(store, trial.trialId, options);
    });
  };
}
