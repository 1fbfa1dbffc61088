import type { Recipe } from '../recipe/Recipe.ts';

/** The latest version of each recipe, by assembly and press; the most recently accepted first. */
export function recipesInForce(all: readonly Recipe[]): readonly Recipe[] {
  const latest = new Map<string, Recipe>();
  for (const recipe of all) {
    const name = JSON.stringify([recipe.assemblyName, recipe.pressName]);
    const known = latest.get(name);
    if (known === undefined || known.version < recipe.version) latest.set(name, recipe);
  }
  return [...latest.values()].sort((a, b) => b.acceptedAt.localeCompare(a.acceptedAt));
}
