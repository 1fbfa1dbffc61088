import { outcomeJson } from '../../core/result/outcome-json.ts';
import type { Store } from '../../core/store/Store.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { outcomeLines } from '../../core/text/outcome-text.ts';
import { trialHeading, trialLine } from '../../core/text/store-lists-text.ts';
import type { DwellOptions } from '../options/outcome-settings.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';
import { storedOutcome } from '../trials/stored-outcome.ts';

interface TrialsOptions extends StoreOptions, DwellOptions {
  readonly show: 'F' | 'C';
  readonly json?: boolean;
  readonly explain?: boolean;
}

/** `trials`: lists the trials. `trials ID`: one trial with its runs and dwell. */
export async function trials(id: string | undefined, options: TrialsOptions): Promise<void> {
  await readFromStore(options, (store) =>
    id === undefined ? listTrials(store, options) : showTrial(store, id, options),
  );
}

function listTrials(store: Store, options: TrialsOptions) {
  const all = store.trials();
  if (options.json) return printJson({ trials: all });
  print(all.length === 0 ? COMMAND_TEXT.none.trial : all.map(trialLine).join('\n'));
}

/** One trial; exit code 1 when none of its runs counts. */
export function showTrial(store: Store, id: string, options: Omit<TrialsOptions, 'store'>): void {
  const { trial, outcome } = storedOutcome(store, id, options);
  if (options.json)
    printJson({
      trialId: trial.trialId,
      assembly: trial.assemblyName,
      press: trial.pressName,
      simulated: trial.simulated,
      ...outcomeJson(outcome, options.show),
    });
  else
    print(
      [
        trialHeading(trial),
        ...outcomeLines(outcome, options.show, { explain: options.explain === true }),
      ].join('\n'),
    );
  if (outcome.statistics.runs === 0) process.exitCode = 1;
}
