import { type ReProveReason, reProveReasons } from '../../core/conditions/re-prove-reasons.ts';
import type { Recheck } from '../../core/recheck/RecheckResult.ts';
import { recheck } from '../../core/recheck/recheck.ts';
import type { Recipe } from '../../core/recipe/Recipe.ts';
import type { Store } from '../../core/store/Store.ts';
import { reProofs } from './re-proofs.ts';
import { RE_PROVE_AFTER_KEY } from './re-prove-after.ts';

type Part = Pick<Store, 'presses' | 'assemblies' | 'trials' | 'trialRuns' | 'setting'>;

/** What asks for a new proof of each of these recipes, by what the store knows; nothing is analysed again. */
export function reProveReasonsOf(
  store: Part,
  recipes: readonly Recipe[],
  now: string,
): readonly (readonly ReProveReason[])[] {
  const moved = reProofs(store, recipes);
  const days = Number(store.setting(RE_PROVE_AFTER_KEY));
  return recipes.map((recipe, at) =>
    reProveReasons({
      recipe,
      assembly: store.assemblies().find(({ name }) => name === recipe.assemblyName) ?? null,
      moved: moved[at] ?? null,
      laterRuns: laterRuns(store, recipe),
      now,
      afterDays: days > 0 ? days : null,
    }),
  );
}

/** The recipe held against runs made since it was accepted, as they were analysed then. */
function laterRuns(store: Part, recipe: Recipe): Recheck | null {
  const own = new Set(recipe.restsOn.map(({ recordingId, runNumber }) => `${recordingId} ${runNumber}`));
  const all = store
    .trials()
    .filter(
      (trial) =>
        trial.assemblyName === recipe.assemblyName &&
        trial.pressName === recipe.pressName &&
        trial.simulated === recipe.simulated,
    )
    .flatMap((trial) =>
      store.trialRuns(trial.trialId).map((run) => ({ run, later: trial.startedAt > recipe.acceptedAt })),
    );
  const isOwn = ({ run }: (typeof all)[number]) => own.has(`${run.recordingId} ${run.result.runNumber}`);
  const starts = all.filter(isOwn).flatMap(({ run }) => run.result.startC ?? []);
  const later = all.filter((one) => one.later && !isOwn(one));
  if (later.length === 0) return null;
  return recheck({
    recipe,
    recipeStartC: starts.length === 0 ? null : starts.reduce((sum, one) => sum + one, 0) / starts.length,
    runs: later.map(({ run }) => ({ run, recordingId: run.recordingId })),
  });
}
