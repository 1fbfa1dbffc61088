import type { BondingJob } from '../../core/bonding/BondingState.ts';
import type { Recipe } from '../../core/recipe/Recipe.ts';
import { gaugeMoved, recipeGauge } from '../../core/recipe/recipe-gauge.ts';
import { bandOfRuns } from '../../core/screen/band-of-runs.ts';
import type { Store } from '../../core/store/Store.ts';
import { gaugeMovedText } from '../../core/text/recipe-text.ts';
import { earlierRuns } from '../live/earlier-runs.ts';

/** What a recipe needs at the press, from the store: gauge pressure, set points, the band of the runs it rests on. */
export function prepareJob(
  store: Store,
  recipe: Recipe,
  of: Pick<BondingJob, 'platenBandC' | 'bandToleranceC' | 'roles' | 'readerName' | 'simulated' | 'speed'>,
): BondingJob {
  const press = store.presses().find(({ name }) => name === recipe.pressName);
  const assembly = store.assemblies().find(({ name }) => name === recipe.assemblyName);
  const moved = gaugeMoved(recipe, press, assembly);
  return {
    ...of,
    recipe,
    gaugePsi: recipeGauge({ press, assembly, gaugePsi: recipe.gaugePsi, by: 'stated' }).gaugePsi,
    gaugeRemark: moved === null ? null : gaugeMovedText(moved),
    platenSetPointC: recipe.platenSetPointC ?? press?.platenSetPointC ?? null,
    band: bandOfRuns(recipeRuns(store, recipe)),
  };
}

/** The runs that a recipe rests on, as far as the store has them. */
export function recipeRuns(store: Store, recipe: Recipe) {
  const wanted = new Set(recipe.restsOn.map((run) => `${run.recordingId} ${run.runNumber}`));
  const ids = new Set(recipe.restsOn.map(({ recordingId }) => recordingId));
  const trials = store.trials().filter(({ recordingIds }) => recordingIds.some((id) => ids.has(id)));
  return trials
    .flatMap(({ trialId }) => earlierRuns(store, trialId))
    .filter((run) => wanted.has(`${run.recordingId} ${run.runNumber}`));
}
