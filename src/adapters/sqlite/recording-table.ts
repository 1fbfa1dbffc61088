import type Database from 'better-sqlite3';
import { formatRecordingHead } from '../../core/recording/format-recording-head.ts';
import type { Store } from '../../core/store/Store.ts';
import { storeRefusals } from '../../core/text/store-refusals.ts';
import { createNativeHasher } from './create-native-hasher.ts';
import { StoreError } from './StoreError.ts';
import { storedRecording } from './stored-recording.ts';
import { storeTrouble } from './translate-sqlite-error.ts';

interface Row {
  recording_row: number;
  head_text: string;
  closing_text: string | null;
}

/** Blocks are read this many at a time, so that the database is free for writing in between. */
const BLOCKS_AT_A_TIME = 64;

export interface RecordingTable extends Pick<Store, 'recording' | 'recordingIds' | 'recordingText'> {
  /** Makes the recording's row; the hasher already holds the head. */
  begin(head: Parameters<Store['startRecording']>[0]): {
    readonly recordingRow: number;
    readonly hasher: ReturnType<typeof createNativeHasher>;
  };
  /** Throws a StoreError where there is none with this id. */
  row(recordingId: string): number;
}

/** Recordings as their own text: head, blocks of lines, closing line. What is written once is never changed. */
export function recordingTable(database: Database.Database): RecordingTable {
  const insert = database.prepare(`
    INSERT INTO recordings (recording_id, trial_id, simulated, head_text) VALUES (?, ?, ?, ?)
    ON CONFLICT (recording_id) DO NOTHING`);
  const find = database.prepare<[string], Row>(
    'SELECT recording_row, head_text, closing_text FROM recordings WHERE recording_id = ?',
  );
  const ids = database
    .prepare<[], string>('SELECT recording_id FROM recordings ORDER BY recording_row')
    .pluck();
  const blocksAfter = database.prepare<[number, number], { first_entry: number; body_text: string }>(`
    SELECT first_entry, body_text FROM recording_blocks WHERE recording_row = ? AND first_entry > ?
    ORDER BY first_entry LIMIT ${BLOCKS_AT_A_TIME}`);

  function* pieces(recordingId: string): Generator<string> {
    const row = find.get(recordingId);
    if (row === undefined) return;
    yield row.head_text;
    for (let last = -1; ; ) {
      const blocks = blocksAfter.all(row.recording_row, last);
      for (const block of blocks) yield block.body_text;
      if (blocks.length < BLOCKS_AT_A_TIME) break;
      last = blocks.at(-1)?.first_entry ?? last;
    }
    // As it was when reading began: a recording that is closed meanwhile reads as not closed, never as altered.
    if (row.closing_text !== null) yield row.closing_text;
  }

  function* read(recordingId: string): Generator<string> {
    try {
      yield* pieces(recordingId);
    } catch (error) {
      throw storeTrouble(error, database.name, database.open);
    }
  }

  return {
    begin(head) {
      const headText = formatRecordingHead(head);
      const { changes, lastInsertRowid } = insert.run(
        head.recordingId,
        head.trialId ?? null,
        head.simulated ? 1 : 0,
        headText,
      );
      if (changes === 0) {
        throw new StoreError('store-recording-exists', storeRefusals.recordingExists(head.recordingId));
      }
      const hasher = createNativeHasher();
      hasher.update(headText);
      return { recordingRow: Number(lastInsertRowid), hasher };
    },
    row(recordingId) {
      const row = find.get(recordingId);
      if (row === undefined)
        throw new StoreError('store-no-recording', storeRefusals.noRecording(recordingId));
      return row.recording_row;
    },
    recording: (recordingId) =>
      find.get(recordingId) === undefined ? undefined : storedRecording(() => read(recordingId)),
    recordingText: (recordingId) => (find.get(recordingId) === undefined ? undefined : read(recordingId)),
    recordingIds: () => ids.all(),
  };
}
