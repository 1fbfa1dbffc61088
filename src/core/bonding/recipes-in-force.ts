import type { Recipe } from '../recipe/Recipe.ts';

/**
 * The recipe in force of each assembly and press: the latest version that is not withdrawn, a real one before any simulated
 * one. Real ones first, then the most recently accepted.
 */
export function recipesInForce(all: readonly Recipe[]): readonly Recipe[] {
  const best = new Map<string, Recipe>();
  for (const recipe of all) {
    if (recipe.withdrawn != null) continue;
    const name = JSON.stringify([recipe.assemblyName, recipe.pressName]);
    const known = best.get(name);
    if (known === undefined || outranks(recipe, known)) best.set(name, recipe);
  }
  return [...best.values()].sort(
    (a, b) => Number(a.simulated) - Number(b.simulated) || b.acceptedAt.localeCompare(a.acceptedAt),
  );
}

/**
 * The recipe in force for one assembly on one press. For a real trial or press (`simulated` false) one that rests on
 * simulated readings is never in force.
 */
export function recipeInForce(
  all: readonly Recipe[],
  of: {
    readonly assemblyName: string | null;
    readonly pressName: string | null;
    readonly simulated: boolean;
  },
): Recipe | null {
  return (
    recipesInForce(all).find(
      (recipe) =>
        recipe.assemblyName === of.assemblyName &&
        recipe.pressName === of.pressName &&
        (of.simulated || !recipe.simulated),
    ) ?? null
  );
}

const outranks = (one: Recipe, other: Recipe): boolean =>
  one.simulated === other.simulated ? one.version > other.version : !one.simulated;
