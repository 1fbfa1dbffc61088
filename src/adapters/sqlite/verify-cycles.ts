import type Database from 'better-sqlite3';
import type { StoreProblem } from '../../core/exchange/StoreVerification.ts';
import { verificationDetails } from '../../core/text/verification-text.ts';
import type { CycleRow } from './CycleRow.ts';
import { cycleSchema } from './cycle-schema.ts';
import { fromJson } from './from-json.ts';
import { fitsProof } from './json-proof.ts';
import { unreadable } from './unreadable.ts';

interface Row extends CycleRow {
  proof: string | null;
  recipe_there: 0 | 1;
}

/** Cycles can be read, say what their columns say, and the recipe version and recording they name are there. */
export function verifyCycles(database: Database.Database): {
  readonly cycles: number;
  readonly problems: readonly StoreProblem[];
} {
  const all = database.prepare<[], Row>(`
    SELECT *, EXISTS (
      SELECT 1 FROM recipes WHERE recipes.assembly_name = cycles.assembly_name
        AND recipes.press_name = cycles.press_name AND version = recipe_version) AS recipe_there
    FROM cycles ORDER BY cycle_row`);
  const recording = database.prepare<[string]>('SELECT 1 FROM recordings WHERE recording_id = ?');
  const isThere = (recordingId: string): boolean => recording.get(recordingId) !== undefined;
  const problems: StoreProblem[] = [];
  let cycles = 0;
  for (const row of all.iterate()) {
    cycles += 1;
    const detail = unreadable(() => whatIsWrong(row, isThere));
    if (detail !== null) problems.push({ kind: 'cycle', subject: row.cycle_id, detail });
  }
  return { cycles, problems };
}

function whatIsWrong(row: Row, recordingIsThere: (recordingId: string) => boolean): string | null {
  const cycle = fromJson(cycleSchema, row.cycle_json, 'the cycle');
  const same =
    cycle.cycleId === row.cycle_id &&
    cycle.assemblyName === row.assembly_name &&
    cycle.pressName === row.press_name &&
    cycle.recipeVersion === row.recipe_version &&
    cycle.closedAt === row.closed_at &&
    cycle.dwellHeldS === row.dwell_held_s &&
    cycle.result === row.result &&
    cycle.simulated === (row.simulated === 1);
  if (!same) return verificationDetails.cycleDiffers;
  if (row.recipe_there === 0) return verificationDetails.cycleWithoutRecipe(row.recipe_version);
  if (cycle.recordingId !== null && !recordingIsThere(cycle.recordingId))
    return verificationDetails.cycleWithoutRecording(cycle.recordingId);
  return fitsProof(row.cycle_json, row.proof) ? null : verificationDetails.cycleDiffers;
}
