import type Database from 'better-sqlite3';
import * as v from 'valibot';
import type { BondingCycle } from '../../core/bonding/BondingCycle.ts';
import type { Store } from '../../core/store/Store.ts';
import { finite } from './finite.ts';
import { fromJson } from './from-json.ts';
import { toJson } from './to-json.ts';

const figure = v.pipe(v.number(), v.finite());
const figureOrNull = v.nullable(figure);

const schema = v.looseObject({
  cycleId: v.string(),
  assemblyName: v.string(),
  pressName: v.string(),
  recipeVersion: v.number(),
  recordingId: v.nullable(v.string()),
  simulated: v.boolean(),
  initials: v.nullable(v.string()),
  closedAt: v.string(),
  closedBy: v.picklist(['key', 'contact']),
  dwellWantedS: figure,
  dwellHeldS: figure,
  targetC: figure,
  holdWantedS: figure,
  holdCountedS: figureOrNull,
  hold: v.picklist(['verified', 'not-verified', 'not-measured']),
  platensAtClosingC: v.looseObject({ upper: figureOrNull, lower: figureOrNull }),
  lowestC: figureOrNull,
  peakC: figureOrNull,
  result: v.picklist(['done', 'opened-early', 'hold-not-verified', 'platen-out-of-band', 'left']),
  flags: v.array(v.string()),
}) as v.GenericSchema<unknown, BondingCycle>;

/** Cycles of production, only ever added. */
export function cycleTable(database: Database.Database): Pick<Store, 'saveCycle' | 'cycles'> {
  const insert = database.prepare(`
    INSERT INTO cycles (cycle_id, assembly_name, press_name, recipe_version, closed_at, dwell_held_s, result, simulated, cycle_json)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`);
  const all = database.prepare<[], string>('SELECT cycle_json FROM cycles ORDER BY cycle_row').pluck();
  return {
    saveCycle(cycle) {
      insert.run(
        cycle.cycleId,
        cycle.assemblyName,
        cycle.pressName,
        cycle.recipeVersion,
        cycle.closedAt,
        finite('dwell_held_s', cycle.dwellHeldS),
        cycle.result,
        cycle.simulated ? 1 : 0,
        toJson(cycle),
      );
    },
    cycles: () => all.all().map((json) => fromJson(schema, json, 'a cycle')),
  };
}
