import { type ReProveReason, reProveReasons } from '../../core/conditions/re-prove-reasons.ts';
import type { Recheck } from '../../core/recheck/RecheckResult.ts';
import { recheck } from '../../core/recheck/recheck.ts';
import type { Recipe } from '../../core/recipe/Recipe.ts';
import type { Store } from '../../core/store/Store.ts';
import { reProofs } from './re-proofs.ts';
import { RE_PROVE_AFTER_KEY } from './re-prove-after.ts';

type Part = Pick<Store, 'presses' | 'assemblies' | 'trials' | 'trialRuns' | 'setting'>;

/** What asks for a new proof of each of these recipes, by what the store knows; nothing is analysed again. `latestTrials` bounds how many later trials are looked at. */
export function reProveReasonsOf(
  store: Part,
  recipes: readonly Recipe[],
  now: string,
  latestTrials = Number.POSITIVE_INFINITY,
): readonly (readonly ReProveReason[])[] {
  const moved = reProofs(store, recipes);
  const days = Number(store.setting(RE_PROVE_AFTER_KEY));
  return recipes.map((recipe, at) =>
    reProveReasons({
      recipe,
      assembly: store.assemblies().find(({ name }) => name === recipe.assemblyName) ?? null,
      moved: moved[at] ?? null,
      laterRuns: laterRuns(store, recipe, latestTrials),
      now,
      afterDays: days > 0 ? days : null,
    }),
  );
}

/** The recipe held against runs made since it was accepted, as they were analysed then. */
function laterRuns(store: Part, recipe: Recipe, latestTrials: number): Recheck | null {
  const own = new Set(recipe.restsOn.map(({ recordingId, runNumber }) => `${recordingId} ${runNumber}`));
  const trials = store
    .trials()
    .filter(
      (trial) =>
        trial.assemblyName === recipe.assemblyName &&
        trial.pressName === recipe.pressName &&
        trial.simulated === recipe.simulated,
    );
  const ownIds = new Set(recipe.restsOn.map(({ recordingId }) => recordingId));
  const runsOf = (some: typeof trials) => some.flatMap(({ trialId }) => store.trialRuns(trialId));
  const isOwn = (run: ReturnType<typeof runsOf>[number]) =>
    own.has(`${run.recordingId} ${run.result.runNumber}`);
  const later = runsOf(
    trials
      .filter(({ startedAt }) => startedAt > recipe.acceptedAt)
      .slice(-Math.min(latestTrials, trials.length)),
  ).filter((run) => !isOwn(run));
  if (later.length === 0) return null;
  const starts = runsOf(trials.filter(({ recordingIds }) => recordingIds.some((id) => ownIds.has(id))))
    .filter(isOwn)
    .flatMap(({ result }) => result.startC ?? []);
  return recheck({
    recipe,
    recipeStartC: starts.length === 0 ? null : starts.reduce((sum, one) => sum + one, 0) / starts.length,
    runs: later.map((run) => ({ run, recordingId: run.recordingId })),
  });
}
