import type Database from 'better-sqlite3';
import type { Recipe } from '../../core/recipe/Recipe.ts';
import type { Store } from '../../core/store/Store.ts';
import { fromJson } from './from-json.ts';
import { recipeSchema } from './recipe-schema.ts';
import { toJson } from './to-json.ts';

/** Recipe versions, only ever added; numbered from 1 for each assembly and press. */
export function recipeTable(database: Database.Database): Pick<Store, 'saveRecipe' | 'recipes'> {
  const latest = database
    .prepare<[string, string], number>(
      'SELECT coalesce(max(version), 0) FROM recipes WHERE assembly_name = ? AND press_name = ?',
    )
    .pluck();
  const insert = database.prepare(`
    INSERT INTO recipes (assembly_name, press_name, version, accepted_at, dwell_s, simulated, recipe_json)
    VALUES (?, ?, ?, ?, ?, ?, ?)`);
  const all = database.prepare<[], string>('SELECT recipe_json FROM recipes ORDER BY recipe_row').pluck();
  const save = database.transaction((given: Omit<Recipe, 'version'>): Recipe => {
    const version = (latest.get(given.assemblyName, given.pressName) ?? 0) + 1;
    const recipe: Recipe = { ...given, version };
    insert.run(
      recipe.assemblyName,
      recipe.pressName,
      version,
      recipe.acceptedAt,
      recipe.dwellS,
      recipe.simulated ? 1 : 0,
      toJson(recipe),
    );
    return recipe;
  });
  return {
    saveRecipe: (recipe) => save.immediate(recipe),
    recipes: () => all.all().map((json) => fromJson(recipeSchema, json, 'a recipe')),
  };
}
