import { recipesInForce } from '../../core/bonding/recipes-in-force.ts';
import type { Recipe } from '../../core/recipe/Recipe.ts';
import type { Store } from '../../core/store/Store.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { OptionError } from '../options/OptionError.ts';
import { parseCount } from '../options/parse-count.ts';

/** The recipe that the options name: the one in force unless a version is stated; the only one needs no name. */
export function findRecipe(
  store: Store,
  options: { readonly assembly?: string; readonly press?: string; readonly version?: string },
): Recipe {
  const version =
    options.version === undefined
      ? null
      : parseCount(options.version, '--version', { least: 1, most: 1_000_000 });
  const all = store.recipes();
  const fitting = (version === null ? recipesInForce(all) : all).filter(
    (recipe) =>
      (options.assembly === undefined || recipe.assemblyName === options.assembly) &&
      (options.press === undefined || recipe.pressName === options.press) &&
      (version === null || recipe.version === version),
  );
  const kinds = [...new Set(fitting.map((recipe) => `${recipe.assemblyName} on ${recipe.pressName}`))];
  const [only] = fitting;
  if (kinds.length === 1 && only !== undefined) return only;
  throw new OptionError(
    kinds.length === 0
      ? version === null
        ? 'no such recipe in force'
        : 'no such recipe in the store'
      : `several recipes fit: ${kinds.map((kind) => neutralise(kind)).join('; ')}`,
    'Name it: --assembly WB-212 --press North (dwellwright recipes lists them)',
    'recipe-unknown',
  );
}

/** Measured runs are never held against a recipe that rests on simulated readings. */
export function refuseSimulatedFor(recipe: Recipe, runsAreMeasured: boolean): void {
  if (!recipe.simulated || !runsAreMeasured) return;
  throw new OptionError(
    `the recipe of ${neutralise(recipe.assemblyName)} on ${neutralise(recipe.pressName)} rests on simulated readings, the runs are measured`,
    'Accept a recipe of measured runs first: dwellwright accept TRIAL --initials AB',
    'recipe-simulated',
  );
}
