import { recheck } from '../../core/recheck/recheck.ts';
import type { ReportSection } from '../../core/report/ReportContent.ts';
import { recheckSection } from '../../core/report/recheck-section.ts';
import type { TemperatureUnit } from '../../core/text/units-text.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';
import { findRecipe, refuseSimulatedFor } from '../recheck/find-recipe.ts';
import type { GatheredTrial } from './GatheredTrial.ts';

/** The trial's runs held against the recipe of its assembly and press (the latest version unless one is stated). */
export function recheckOfTrial(
  { outcome, job }: GatheredTrial,
  options: StoreOptions & { readonly recheck: string | true; readonly show: TemperatureUnit },
): Promise<ReportSection> {
  return readFromStore(options, (store) => {
    const recipe = findRecipe(store, {
      ...(job.assemblyName === null ? {} : { assembly: job.assemblyName }),
      ...(job.pressName === null ? {} : { press: job.pressName }),
      ...(options.recheck === true ? {} : { version: options.recheck }),
    });
    refuseSimulatedFor(recipe, !job.simulated);
    const ids = new Set(recipe.restsOn.map(({ recordingId, runNumber }) => `${recordingId} ${runNumber}`));
    const startsC = store
      .trials()
      .filter(
        ({ assemblyName, pressName }) =>
          assemblyName === recipe.assemblyName && pressName === recipe.pressName,
      )
      .flatMap(({ trialId }) => store.trialRuns(trialId))
      .flatMap(({ recordingId, result }) =>
        ids.has(`${recordingId} ${result.runNumber}`) ? (result.startC ?? []) : [],
      );
    const result = recheck({
      recipe,
      recipeStartC:
        startsC.length === 0 ? null : startsC.reduce((sum, value) => sum + value, 0) / startsC.length,
      runs: outcome.runs.map((run) => ({ run, before: null })),
    });
    return recheckSection(recipe, result, options.show);
  });
}
