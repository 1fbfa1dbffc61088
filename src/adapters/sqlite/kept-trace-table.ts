import type Database from 'better-sqlite3';
import type { Store } from '../../core/store/Store.ts';

/** Decoded traces kept beside their recordings: derived, replaced freely. */
export function keptTraceTable(database: Database.Database): Pick<Store, 'keptTrace' | 'keepTraces'> {
  const read = database
    .prepare<[string, number], Buffer>(`
      SELECT trace FROM kept_traces JOIN recordings USING (recording_row)
      WHERE recording_id = ? AND decode_version = ? AND closing_text IS NOT NULL`)
    .pluck();
  const write = database.prepare<[number, Uint8Array, string]>(`
    INSERT INTO kept_traces (recording_row, decode_version, trace)
    SELECT recording_row, ?, ? FROM recordings WHERE recording_id = ? AND closing_text IS NOT NULL
    ON CONFLICT (recording_row) DO UPDATE SET decode_version = excluded.decode_version, trace = excluded.trace`);
  return {
    keptTrace: (recordingId, decodeVersion) => read.get(recordingId, decodeVersion),
    keepTraces: database.transaction((traces, decodeVersion) => {
      for (const { recordingId, trace } of traces) write.run(decodeVersion, trace, recordingId);
    }) as Store['keepTraces'],
  };
}
