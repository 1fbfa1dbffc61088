import type Database from 'better-sqlite3';
import { probeSchema } from '../../core/probe/probe-record.ts';
import type { Store } from '../../core/store/Store.ts';
import { fromJson } from './from-json.ts';
import { toJson } from './to-json.ts';

/** Probes with their history: saving one again adds a version, the latest of each name counts. */
export function probeTable(
  database: Database.Database,
): Pick<Store, 'saveProbe' | 'probes' | 'probeHistory'> {
  const save = database.prepare<[string, string, string]>(
    'INSERT INTO probes (name, saved_at, probe_json) VALUES (?, ?, ?)',
  );
  const latest = database.prepare<[], { probe_json: string }>(
    'SELECT probe_json FROM probes WHERE probe_row IN (SELECT max(probe_row) FROM probes GROUP BY name) ORDER BY name',
  );
  const history = database.prepare<[string], { saved_at: string; probe_json: string }>(
    'SELECT saved_at, probe_json FROM probes WHERE name = ? ORDER BY probe_row DESC',
  );
  return {
    saveProbe: (probe, savedAt) => {
      save.run(probe.name, savedAt, toJson(probe));
    },
    probes: () => latest.all().map((row) => fromJson(probeSchema, row.probe_json, 'a probe')),
    probeHistory: (name) =>
      history.all(name).map((row) => ({
        savedAt: row.saved_at,
        probe: fromJson(probeSchema, row.probe_json, 'a probe'),
      })),
  };
}
