import type Database from 'better-sqlite3';
import * as v from 'valibot';
import type { ClosingUnderWay } from '../../core/bonding/ClosingUnderWay.ts';
import type { Store } from '../../core/store/Store.ts';
import { cycleSchema } from './cycle-schema.ts';
import { fromJson } from './from-json.ts';
import { toJson } from './to-json.ts';

const closingSchema = v.looseObject({
  cycle: cycleSchema,
  seenAt: v.string(),
  hostName: v.string(),
  processId: v.number(),
}) as v.GenericSchema<unknown, ClosingUnderWay>;

/** Closings that run now. Each is renewed while it runs, and gone once its cycle is logged or its mark was taken back. */
export function closingTable(
  database: Database.Database,
): Pick<Store, 'saveClosing' | 'closings' | 'dropClosing'> {
  const put = database.prepare(`
    INSERT INTO closings_under_way (cycle_id, closing_json) VALUES (?, ?)
    ON CONFLICT (cycle_id) DO UPDATE SET closing_json = excluded.closing_json`);
  const all = database
    .prepare<[], string>('SELECT closing_json FROM closings_under_way ORDER BY closing_row')
    .pluck();
  const drop = database.prepare('DELETE FROM closings_under_way WHERE cycle_id = ?');
  return {
    saveClosing: (closing) => void put.run(closing.cycle.cycleId, toJson(closing)),
    closings: () => all.all().map((json) => fromJson(closingSchema, json, 'a closing under way')),
    dropClosing: (cycleId) => void drop.run(cycleId),
  };
}
