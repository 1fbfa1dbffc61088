import type Database from 'better-sqlite3';
import * as v from 'valibot';
import type { RecordingPart, SavedLayout, StoreExchange } from '../../core/exchange/StoreExchange.ts';
import { CHANNEL_ROLES } from '../../core/recording/RecordingEntry.ts';
import { storeRefusals } from '../../core/text/store-refusals.ts';
import { fromJson } from './from-json.ts';
import { recordingsByHeadHash } from './recordings-by-head-hash.ts';
import { StoreError } from './StoreError.ts';
import { toJson } from './to-json.ts';

const columnText = v.pipe(v.string(), v.minLength(1));

const layoutOptionsSchema: v.GenericSchema<unknown, SavedLayout['options']> = v.object({
  timeColumn: v.exactOptional(columnText),
  temperatureColumns: v.exactOptional(v.array(columnText)),
  unit: v.exactOptional(v.picklist(['C', 'F', 'K'])),
  timeUnit: v.exactOptional(v.picklist(['s', 'ms', 'us', 'min', 'h'])),
  roles: v.exactOptional(v.array(v.picklist(CHANNEL_ROLES))),
  rows: v.exactOptional(columnText),
  intervalS: v.exactOptional(v.pipe(v.number(), v.finite())),
});

type Import = ReturnType<StoreExchange['importsOf']>[number];

/** Files brought in, and named layouts of loggers' files. */
export function exchangeTable(database: Database.Database): StoreExchange {
  const broughtIn = database.prepare<[string, string], Import>(`
    SELECT recording_id AS recordingId, trial_id AS trialId, file_sha256 AS fileSha256,
      file_name AS fileName, read_as AS readAs, imported_at AS importedAt
    FROM imports JOIN recordings USING (recording_row)
    WHERE file_sha256 = ? OR (read_as <> '' AND recording_id IN (SELECT value FROM json_each(?)))
    ORDER BY recording_row`);
  const heads = recordingsByHeadHash(database);
  const insertRecording = database.prepare(`
    INSERT INTO recordings (recording_id, trial_id, simulated, head_text) VALUES (?, ?, ?, ?)
    ON CONFLICT (recording_id) DO NOTHING`);
  const insertBlock = database.prepare(
    'INSERT INTO recording_blocks (recording_row, first_entry, entry_count, body_text) VALUES (?, ?, ?, ?)',
  );
  const close = database.prepare('UPDATE recordings SET closing_text = ? WHERE recording_row = ?');
  const insertImport = database.prepare(`
    INSERT INTO imports (recording_row, file_sha256, file_name, read_as, imported_at) VALUES (?, ?, ?, ?, ?)`);
  const layouts = database.prepare<[], { name: string; options_json: string; saved_at: string }>(
    'SELECT * FROM logger_layouts ORDER BY name',
  );
  const saveLayout = database.prepare(`
    INSERT INTO logger_layouts (name, options_json, saved_at) VALUES (?, ?, ?)
    ON CONFLICT (name) DO UPDATE SET options_json = excluded.options_json, saved_at = excluded.saved_at`);

  const add = (recording: Parameters<StoreExchange['addRecording']>[0]): void => {
    let row: number | bigint | null = null;
    let stored = 0;
    for (const part of recording.parts) {
      if (part.kind === 'head') row = begin(recording, part);
      else if (row === null) throw new TypeError('a recording begins with its head');
      else if (part.kind === 'closing') close.run(part.text, row);
      else {
        insertBlock.run(row, stored, part.entries, part.text);
        stored += part.entries;
      }
    }
    const { fileSha256, fileName, readAs, importedAt } = recording.file;
    insertImport.run(row, fileSha256, fileName, readAs, importedAt);
  };

  const begin = (
    { recordingId, trialId, simulated }: Parameters<StoreExchange['addRecording']>[0],
    head: RecordingPart,
  ): number | bigint => {
    const done = insertRecording.run(recordingId, trialId, simulated ? 1 : 0, head.text);
    if (done.changes === 0)
      throw new StoreError('store-recording-exists', storeRefusals.recordingExists(recordingId));
    return done.lastInsertRowid;
  };

  return {
    atomically: (work) => database.transaction(work).immediate(),
    importsOf: (sha256) => {
      const named = heads.of(sha256);
      const rows = broughtIn.all(sha256, JSON.stringify(named.map(({ recordingId }) => recordingId)));
      // A recording that came in as its own text form, on the way from a store where its file was brought in.
      const further = named.filter(({ recordingId }) => !rows.some((row) => row.recordingId === recordingId));
      return [
        ...rows,
        ...further.map((one) => ({ ...one, fileSha256: sha256, fileName: '', readAs: '', importedAt: '' })),
      ];
    },
    addRecording: (recording) => database.transaction(add).immediate(recording),
    layouts: () =>
      layouts.all().map((row) => ({
        name: row.name,
        options: fromJson(layoutOptionsSchema, row.options_json, `the layout "${row.name}"`),
        savedAt: row.saved_at,
      })),
    saveLayout: ({ name, options, savedAt }) => {
      saveLayout.run(name, toJson(options), savedAt);
    },
  };
}
