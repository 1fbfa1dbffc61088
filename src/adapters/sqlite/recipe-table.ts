import type Database from 'better-sqlite3';
import type { Recipe } from '../../core/recipe/Recipe.ts';
import type { Withdrawal } from '../../core/recipe/Withdrawal.ts';
import type { Store } from '../../core/store/Store.ts';
import { fromJson } from './from-json.ts';
import { jsonProof } from './json-proof.ts';
import { recipeKey } from './recipe-key.ts';
import { recipeSchema } from './recipe-schema.ts';
import { toJson } from './to-json.ts';

interface WithdrawalRow {
  assembly_name: string;
  press_name: string;
  version: number;
  withdrawn_at: string;
  initials: string;
  reason: string;
}

/** Recipe versions, only ever added; numbered from 1 for each assembly and press. Withdrawals stand beside them. */
export function recipeTable(
  database: Database.Database,
): Pick<Store, 'saveRecipe' | 'recipes' | 'withdrawRecipe'> {
  const latest = database
    .prepare<[string, string], number>(
      'SELECT coalesce(max(version), 0) FROM recipes WHERE assembly_name = ? AND press_name = ?',
    )
    .pluck();
  const insert = database.prepare(`
    INSERT INTO recipes (assembly_name, press_name, version, accepted_at, dwell_s, simulated, recipe_json, proof)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?)`);
  const all = database.prepare<[], string>('SELECT recipe_json FROM recipes ORDER BY recipe_row').pluck();
  const versions = database.prepare<[string, string], { version: number; recipe_json: string }>(
    'SELECT version, recipe_json FROM recipes WHERE assembly_name = ? AND press_name = ?',
  );
  const withdrawals = database.prepare<[], WithdrawalRow>(
    'SELECT * FROM recipe_withdrawals ORDER BY withdrawn_at DESC, initials DESC, reason DESC',
  );
  const insertWithdrawal = database.prepare<[WithdrawalRow]>(`
    INSERT INTO recipe_withdrawals (assembly_name, press_name, version, withdrawn_at, initials, reason)
    VALUES (@assembly_name, @press_name, @version, @withdrawn_at, @initials, @reason)`);
  const save = database.transaction((given: Omit<Recipe, 'version' | 'withdrawn'>): Recipe => {
    const version = (latest.get(given.assemblyName, given.pressName) ?? 0) + 1;
    const { withdrawn: _withdrawn, ...recipe }: Recipe = { ...given, version };
    const json = toJson(recipe);
    insert.run(
      recipe.assemblyName,
      recipe.pressName,
      version,
      recipe.acceptedAt,
      recipe.dwellS,
      recipe.simulated ? 1 : 0,
      json,
      jsonProof(json),
    );
    return recipe;
  });
  const withdraw = database.transaction(
    ({ assemblyName, pressName, version, withdrawnAt, initials, reason }: WithdrawnVersion): void => {
      const rows = versions.all(assemblyName, pressName);
      const named = rows.find((row) => row.version === version);
      const key = named === undefined ? null : recipeKey(named.recipe_json);
      // A version that a merge repeated is the same recipe: it must not come back in force by its other number.
      const same = rows.filter((row) => row.version === version || recipeKey(row.recipe_json) === key);
      for (const row of same.length === 0 ? [{ version }] : same)
        insertWithdrawal.run({
          assembly_name: assemblyName,
          press_name: pressName,
          version: row.version,
          withdrawn_at: withdrawnAt,
          initials,
          reason,
        });
    },
  );
  return {
    saveRecipe: (recipe) => save.immediate(recipe),
    withdrawRecipe: (withdrawal) => withdraw.immediate(withdrawal),
    recipes: () => {
      // The first statement comes last and stays.
      const withdrawn = new Map(
        withdrawals
          .all()
          .map((row): [string, Withdrawal] => [
            nameOf(row.assembly_name, row.press_name, row.version),
            { withdrawnAt: row.withdrawn_at, initials: row.initials, reason: row.reason },
          ]),
      );
      return all.all().map((json) => {
        const recipe = fromJson(recipeSchema, json, 'a recipe');
        const taken = withdrawn.get(nameOf(recipe.assemblyName, recipe.pressName, recipe.version));
        return taken === undefined ? recipe : { ...recipe, withdrawn: taken };
      });
    },
  };
}

type WithdrawnVersion = Parameters<Store['withdrawRecipe']>[0];

const nameOf = (assemblyName: string, pressName: string, version: number): string =>
  JSON.stringify([assemblyName, pressName, version]);
