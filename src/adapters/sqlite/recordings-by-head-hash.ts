import type Database from 'better-sqlite3';
import { CONTENT_HASH_KEY, FILE_HASH_KEY } from '../../core/exchange/imported-head.ts';

interface Row {
  readonly recording_row: number;
  readonly recordingId: string;
  readonly trialId: string | null;
  readonly head_text: string;
}

type Named = Pick<Row, 'recordingId' | 'trialId'>;

const HASHES = new RegExp(`^(?:${FILE_HASH_KEY}|${CONTENT_HASH_KEY}): ([0-9a-f]{64})$`, 'gm');

/**
 * Recordings by the hashes of their file that their heads name. A head is never changed, so each is read once: bringing in
 * thousands of files does not read thousands of heads for each.
 */
export function recordingsByHeadHash(database: Database.Database): { of(sha256: string): readonly Named[] } {
  const after = database.prepare<[number], Row>(`
    SELECT recording_row, recording_id AS recordingId, trial_id AS trialId, head_text FROM recordings
    WHERE recording_row > ? AND instr(head_text, '${FILE_HASH_KEY}') > 0 ORDER BY recording_row`);
  const named = new Map<string, Named[]>();
  let last = 0;
  return {
    of(sha256) {
      for (const { recording_row: row, recordingId, trialId, head_text: head } of after.iterate(last)) {
        last = row;
        for (const [, hash = ''] of head.matchAll(HASHES)) {
          const before = named.get(hash) ?? [];
          named.set(hash, [...before, { recordingId, trialId }]);
        }
      }
      // A recording begun inside a change that was taken back is not there.
      return named.get(sha256) ?? [];
    },
  };
}
