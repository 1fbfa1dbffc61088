import { createHash } from 'node:crypto';
import type Database from 'better-sqlite3';
import type { Store } from '../../core/store/Store.ts';

interface Row {
  readonly trace: Buffer;
  readonly proof: Buffer;
  readonly closing_text: string;
}

/**
 * Decoded traces kept beside their recordings: derived, replaced freely. Each is proved by the SHA-256 of the recording's
 * closing line and the trace; one that does not fit is as if it were not there, and is decoded anew.
 */
export function keptTraceTable(database: Database.Database): Pick<Store, 'keptTrace' | 'keepTraces'> {
  const read = database.prepare<[string, number], Row>(`
    SELECT trace, proof, closing_text FROM kept_traces JOIN recordings USING (recording_row)
    WHERE recording_id = ? AND decode_version = ? AND closing_text IS NOT NULL`);
  const closing = database
    .prepare<[string], string>(
      'SELECT closing_text FROM recordings WHERE recording_id = ? AND closing_text IS NOT NULL',
    )
    .pluck();
  const write = database.prepare<[number, Uint8Array, Uint8Array, string]>(`
    INSERT INTO kept_traces (recording_row, decode_version, trace, proof)
    SELECT recording_row, ?, ?, ? FROM recordings WHERE recording_id = ?
    ON CONFLICT (recording_row) DO UPDATE SET
      decode_version = excluded.decode_version, trace = excluded.trace, proof = excluded.proof`);
  return {
    keptTrace: (recordingId, decodeVersion) => {
      const row = read.get(recordingId, decodeVersion);
      return row !== undefined && proofOf(row.closing_text, row.trace).equals(row.proof)
        ? row.trace
        : undefined;
    },
    keepTraces: database.transaction((traces, decodeVersion) => {
      for (const { recordingId, trace } of traces) {
        const closingText = closing.get(recordingId);
        if (closingText !== undefined)
          write.run(decodeVersion, trace, proofOf(closingText, trace), recordingId);
      }
    }) as Store['keepTraces'],
  };
}

/** SHA-256 of closing line and trace: a trace of another recording, or a damaged one, does not fit. */
export function proofOf(closingText: string, trace: Uint8Array): Buffer {
  return createHash('sha256').update(closingText, 'utf8').update(trace).digest();
}
