import type Database from 'better-sqlite3';
import type { Store } from '../../core/store/Store.ts';
import { cycleSchema } from './cycle-schema.ts';
import { finite } from './finite.ts';
import { fromJson } from './from-json.ts';
import { jsonProof } from './json-proof.ts';
import { toJson } from './to-json.ts';

/** Cycles of production, only ever added. A cycle that is logged is no longer under way. */
export function cycleTable(database: Database.Database): Pick<Store, 'saveCycle' | 'cycles'> {
  const insert = database.prepare(`
    INSERT INTO cycles (cycle_id, assembly_name, press_name, recipe_version, closed_at, dwell_held_s, result, simulated, cycle_json, proof)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`);
  const over = database.prepare('DELETE FROM closings_under_way WHERE cycle_id = ?');
  const all = database.prepare<[], string>('SELECT cycle_json FROM cycles ORDER BY cycle_row').pluck();
  return {
    saveCycle: database.transaction((cycle) => {
      over.run(cycle.cycleId);
      const json = toJson(cycle);
      insert.run(
        cycle.cycleId,
        cycle.assemblyName,
        cycle.pressName,
        cycle.recipeVersion,
        cycle.closedAt,
        finite('dwell_held_s', cycle.dwellHeldS),
        cycle.result,
        cycle.simulated ? 1 : 0,
        json,
        jsonProof(json),
      );
    }),
    cycles: () => all.all().map((json) => fromJson(cycleSchema, json, 'a cycle')),
  };
}
