import type { Recipe } from '../../core/recipe/Recipe.ts';
import type { Store } from '../../core/store/Store.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { OptionError } from '../options/OptionError.ts';
import { parseCount } from '../options/parse-count.ts';

/** The recipe that the options name: the latest version unless one is stated; the only one needs no name. */
export function findRecipe(
  store: Store,
  options: { readonly assembly?: string; readonly press?: string; readonly version?: string },
): Recipe {
  const version =
    options.version === undefined
      ? null
      : parseCount(options.version, '--version', { least: 1, most: 1_000_000 });
  const fitting = store
    .recipes()
    .filter(
      (recipe) =>
        (options.assembly === undefined || recipe.assemblyName === options.assembly) &&
        (options.press === undefined || recipe.pressName === options.press) &&
        (version === null || recipe.version === version),
    );
  const kinds = [...new Set(fitting.map((recipe) => `${recipe.assemblyName} on ${recipe.pressName}`))];
  if (kinds.length === 1)
    return fitting.reduce((best, recipe) => (recipe.version > best.version ? recipe : best));
  throw new OptionError(
    kinds.length === 0
      ? 'no such recipe in the store'
      : `several recipes fit: ${kinds.map((kind) => neutralise(kind)).join('; ')}`,
    'Name it: --assembly WB-212 --press North (dwellwright recipes lists them)',
    'recipe-unknown',
  );
}
