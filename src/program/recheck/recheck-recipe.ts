import { type DwellAtTarget, dwellAtTarget } from '../../core/recheck/dwell-at-target.ts';
import { forWhatIf } from '../../core/recheck/for-what-if.ts';
import type { Recheck } from '../../core/recheck/RecheckResult.ts';
import { recheck } from '../../core/recheck/recheck.ts';
import type { Recipe } from '../../core/recipe/Recipe.ts';
import { type OutcomeSettings, type TrialOutcome, trialOutcome } from '../../core/result/trial-outcome.ts';
import type { Store } from '../../core/store/Store.ts';
import { parseTemperature } from '../../core/units/parse-temperature.ts';
import { OptionError } from '../options/OptionError.ts';
import { type DwellOptions, outcomeSettings } from '../options/outcome-settings.ts';
import { type RuleOptions, runRules } from '../options/run-rules.ts';
import type { StoreOptions } from '../options/with-store.ts';
import type { SourceOptions } from '../sources/Source.ts';
import { findTrial } from '../trials/stored-outcome.ts';
import { findRecipe, refuseSimulatedFor } from './find-recipe.ts';
import type { Gathered } from './GatheredRun.ts';
import { gatherFiles, gatherStored } from './gather-runs.ts';

export interface RecheckWish extends StoreOptions, RuleOptions, SourceOptions, DwellOptions {
  readonly assembly?: string;
  readonly press?: string;
  readonly version?: string;
  readonly trial?: string;
  readonly targets?: readonly string[];
}

export interface RecheckedRecipe {
  readonly recipe: Recipe;
  readonly result: Recheck;
  /** What the runs would suggest now. */
  readonly outcome: TrialOutcome;
  readonly settings: OutcomeSettings;
  readonly byTarget: readonly DwellAtTarget[];
  readonly gathered: Gathered;
}

/** A recipe held against runs of files or, without files, of its store, all analysed again by today's rules. */
export async function recheckRecipe(
  store: Store,
  files: readonly string[],
  options: RecheckWish,
): Promise<RecheckedRecipe> {
  const recipe = findRecipe(store, options);
  // The recipe's own target and hold, whatever the recordings say, unless the user asks for others.
  const rules = runRules(options, recipe);
  const ruleOptions: RuleOptions = { ...options, target: `${rules.targetC}C`, hold: `${rules.holdS}s` };
  const targetsC = (options.targets ?? []).map((text) => parseTemperature(text, '--targets'));
  const asked = { options: ruleOptions, targetsC };
  const trials = files.length > 0 ? [] : trialsOf(store, recipe, options);
  refuseSimulatedFor(
    recipe,
    trials.some((one) => !one.simulated),
  );
  const all =
    files.length > 0
      ? await gatherFiles(files, options, asked)
      : await gatherStored(store, trials, options, asked);
  const { runs: gathered, probes, atTargets } = all;
  if (gathered.length === 0)
    throw new OptionError(
      'recheck: no run to look at',
      'Name recordings, or --trial ID; without them all of this assembly and press in the store are taken',
      'no-runs',
    );
  const result = recheck({
    recipe,
    recipeStartC: recipeStart(store, recipe),
    targetC: rules.targetC,
    holdS: rules.holdS,
    runs: gathered.map(({ run, before, madeOn, recordingId }) => ({
      run,
      madeOn,
      recordingId,
      before:
        before === null
          ? null
          : { soakTimeS: before.soakTimeS, verdict: before.verdict, ruleVersion: before.ruleVersion },
    })),
  });
  const press = store.presses().find(({ name }) => name === recipe.pressName);
  const stated = outcomeSettings(options, rules, press, probes);
  // Runs of many days: what stands off one reference is what a re-check is to show, not to leave out.
  const settings = trials.length === 1 ? stated : { ...stated, reference: null };
  const outcome = trialOutcome(
    result.runs.map(({ run }) => run),
    settings,
  );
  const byTarget: DwellAtTarget[] = targetsC.map((targetC, at) =>
    dwellAtTarget((atTargets[at] ?? []).map(forWhatIf), { ...settings, targetC }),
  );
  return { recipe, result, outcome, settings, byTarget, gathered: all };
}

function trialsOf(store: Store, recipe: Recipe, { trial }: RecheckWish) {
  if (trial !== undefined) return [findTrial(store, trial)];
  return store
    .trials()
    .filter(
      (one) =>
        one.assemblyName === recipe.assemblyName &&
        one.pressName === recipe.pressName &&
        one.simulated === recipe.simulated,
    );
}

/** Mean start temperature of the runs that the recipe rests on, as stored; null where they are not in this store. */
function recipeStart(store: Store, recipe: Recipe): number | null {
  const ids = new Set(recipe.restsOn.map(({ recordingId, runNumber }) => `${recordingId} ${runNumber}`));
  const startsC = store
    .trials()
    .flatMap((trial) =>
      trial.assemblyName === recipe.assemblyName && trial.pressName === recipe.pressName
        ? store
            .trialRuns(trial.trialId)
            .flatMap(({ recordingId, result }) =>
              ids.has(`${recordingId} ${result.runNumber}`) ? (result.startC ?? []) : [],
            )
        : [],
    );
  return startsC.length === 0 ? null : startsC.reduce((sum, value) => sum + value, 0) / startsC.length;
}
