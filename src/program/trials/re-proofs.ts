import { type ReProof, toBeReProved } from '../../core/conditions/to-be-re-proved.ts';
import type { Recipe } from '../../core/recipe/Recipe.ts';
import type { RunResult } from '../../core/run/RunResult.ts';
import type { Store } from '../../core/store/Store.ts';

/**
 * Whether the platens of each recipe's press have moved since: measured ones as the mean of the last trial on that press
 * (any assembly) whose runs measured them and which the recipe does not rest on, set points as the press has them now.
 */
export function reProofs(
  store: Pick<Store, 'presses' | 'trials' | 'trialRuns'>,
  recipes: readonly Recipe[],
): readonly (ReProof | null)[] {
  return recipes.map((recipe) => {
    const press = store.presses().find((one) => one.name === recipe.pressName);
    return toBeReProved(recipe, {
      measuredC: latestPlatens(store, recipe),
      setPointC: press?.platenSetPointC ?? null,
    });
  });
}

function latestPlatens(store: Pick<Store, 'trials' | 'trialRuns'>, recipe: Recipe) {
  const restsOn = new Set(recipe.restsOn.map((run) => run.recordingId));
  const trials = store
    .trials()
    .filter((trial) => trial.pressName === recipe.pressName && trial.simulated === recipe.simulated)
    .filter(
      (trial) => trial.startedAt > recipe.acceptedAt && !trial.recordingIds.some((id) => restsOn.has(id)),
    )
    .sort((a, b) => (a.startedAt < b.startedAt ? 1 : -1));
  for (const trial of trials) {
    const results = store.trialRuns(trial.trialId).map(({ result }) => result);
    const measured = { upper: mean(results, 'upper'), lower: mean(results, 'lower') };
    if (measured.upper !== null || measured.lower !== null) return measured;
  }
  return null;
}

/** Mean at closing over the runs that are good; a run that waited for a platen says nothing of where it stands. */
function mean(results: readonly RunResult[], which: 'upper' | 'lower'): number | null {
  const known = results.flatMap(({ verdict, platenAtClosingC }) =>
    verdict === 'good' ? (platenAtClosingC[which] ?? []) : [],
  );
  return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length;
}
