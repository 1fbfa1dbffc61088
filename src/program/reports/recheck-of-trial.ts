import { recheck } from '../../core/recheck/recheck.ts';
import type { Recipe } from '../../core/recipe/Recipe.ts';
import type { ReportSection } from '../../core/report/ReportContent.ts';
import { recheckSection } from '../../core/report/recheck-section.ts';
import type { Store } from '../../core/store/Store.ts';
import type { TemperatureUnit } from '../../core/text/units-text.ts';
import { readFromStore, type StoreOptions, withStore } from '../options/with-store.ts';
import { findRecipe, refuseSimulatedFor } from '../recheck/find-recipe.ts';
import { recheckRecipe } from '../recheck/recheck-recipe.ts';
import type { GatheredTrial } from './GatheredTrial.ts';

interface RecheckOptions extends StoreOptions {
  readonly recheck: string | true;
  /** The trial is in the store: its runs are analysed again, and stand beside their stored results. */
  readonly trial?: string;
  readonly show: TemperatureUnit;
}

/** The trial's runs held against the recipe of its assembly and press (the latest version unless one is stated). */
export function recheckOfTrial(gathered: GatheredTrial, options: RecheckOptions): Promise<ReportSection> {
  const { assemblyName, pressName } = gathered.job;
  const wanted = {
    ...(assemblyName === null ? {} : { assembly: assemblyName }),
    ...(pressName === null ? {} : { press: pressName }),
    ...(options.recheck === true ? {} : { version: options.recheck }),
  };
  const { trial, store: path } = options;
  if (trial === undefined)
    return readFromStore(options, (store) => ofFiles(store, gathered, findRecipe(store, wanted), options));
  return withStore(options, async (store) => {
    const { recipe, result } = await recheckRecipe(store, [], {
      ...wanted,
      trial,
      ...(path === undefined ? {} : { store: path }),
    });
    return recheckSection(recipe, result, options.show);
  });
}

/** Files are analysed by today's rules already; a recording that the store holds too stands beside its stored result. */
function ofFiles(
  store: Store,
  { outcome, job, recordings, recordingOfRun }: GatheredTrial,
  recipe: Recipe,
  { show }: RecheckOptions,
): ReportSection {
  refuseSimulatedFor(recipe, !job.simulated);
  const stored = new Map(
    store
      .trials()
      .filter((one) => one.assemblyName === recipe.assemblyName && one.pressName === recipe.pressName)
      .flatMap(({ trialId }) => store.trialRuns(trialId))
      .map((run) => [`${run.recordingId} ${run.result.runNumber}`, run.result] as const),
  );
  const startsC = recipe.restsOn.flatMap(
    ({ recordingId, runNumber }) => stored.get(`${recordingId} ${runNumber}`)?.startC ?? [],
  );
  const result = recheck({
    recipe,
    recipeStartC:
      startsC.length === 0 ? null : startsC.reduce((sum, value) => sum + value, 0) / startsC.length,
    runs: outcome.runs.map((run, at) => {
      const recordingId = recordings[recordingOfRun[at] ?? -1]?.head?.recordingId;
      const before = stored.get(`${recordingId} ${run.result.runNumber}`) ?? null;
      return { run, before, ...(recordingId === undefined ? {} : { recordingId }) };
    }),
  });
  return recheckSection(recipe, result, show);
}
