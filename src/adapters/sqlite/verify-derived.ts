import type Database from 'better-sqlite3';
import type { StoreProblem } from '../../core/exchange/StoreVerification.ts';
import { verificationDetails } from '../../core/text/verification-text.ts';
import { fromJson } from './from-json.ts';
import { fitsProof } from './json-proof.ts';
import { proofOf } from './kept-trace-table.ts';
import { recipeSchema } from './recipe-schema.ts';
import { runResultSchema } from './run-result-schema.ts';
import { unreadable } from './unreadable.ts';

interface RunRow {
  recording_id: string;
  run_number: number;
  result_json: string;
  proof: string | null;
}

interface RecipeRow {
  assembly_name: string;
  press_name: string;
  version: number;
  dwell_s: number;
  simulated: 0 | 1;
  recipe_json: string;
  proof: string | null;
}

interface TraceRow {
  recording_id: string;
  closing_text: string | null;
  trace: Buffer;
  proof: Buffer;
}

/** Run results, kept traces and recipes can be read, and a recipe says what its columns say. */
export function verifyDerived(database: Database.Database): {
  readonly runResults: number;
  readonly recipes: number;
  readonly problems: readonly StoreProblem[];
} {
  const problems: StoreProblem[] = [];
  let runResults = 0;
  const runs = database.prepare<[], RunRow>(
    'SELECT recording_id, run_number, result_json, proof FROM run_results JOIN recordings USING (recording_row)',
  );
  for (const row of runs.iterate()) {
    runResults += 1;
    const detail = unreadable(() => {
      fromJson(runResultSchema, row.result_json, 'a result');
      return fitsProof(row.result_json, row.proof) ? null : verificationDetails.resultDiffers;
    });
    if (detail !== null)
      problems.push({ kind: 'run-result', subject: `${row.recording_id}, run ${row.run_number}`, detail });
  }
  let recipes = 0;
  for (const row of database.prepare<[], RecipeRow>('SELECT * FROM recipes ORDER BY recipe_row').iterate()) {
    recipes += 1;
    const detail = recipeTrouble(row);
    const subject = `${row.assembly_name} on ${row.press_name}, version ${row.version}`;
    if (detail !== null) problems.push({ kind: 'recipe', subject, detail });
  }
  const traces = database.prepare<[], TraceRow>(
    'SELECT recording_id, closing_text, trace, proof FROM kept_traces JOIN recordings USING (recording_row)',
  );
  for (const { recording_id: subject, closing_text: closing, trace, proof } of traces.iterate())
    if (closing === null || !proofOf(closing, trace).equals(proof))
      problems.push({ kind: 'kept-trace', subject, detail: verificationDetails.traceDiffers });
  return { runResults, recipes, problems };
}

function recipeTrouble(row: RecipeRow): string | null {
  return unreadable(() => {
    const recipe = fromJson(recipeSchema, row.recipe_json, 'the recipe');
    const same =
      recipe.assemblyName === row.assembly_name &&
      recipe.pressName === row.press_name &&
      recipe.version === row.version &&
      recipe.dwellS === row.dwell_s &&
      recipe.simulated === (row.simulated === 1);
    return same && fitsProof(row.recipe_json, row.proof) ? null : verificationDetails.recipeDiffers;
  });
}
