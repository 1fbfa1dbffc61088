import type Database from 'better-sqlite3';
import { ExchangeError } from '../../core/exchange/ExchangeError.ts';
import type { MergeDifference } from '../../core/exchange/MergeReport.ts';
import { exchangeRefusals } from '../../core/text/exchange-text.ts';
import { bodyHash, entryCount, recordingBody } from './recording-body.ts';

interface Row {
  recording_row: number;
  recording_id: string;
  trial_id: string | null;
  simulated: 0 | 1;
  head_text: string;
  closing_text: string | null;
}

export interface MergedRecordings {
  readonly added: number;
  readonly continued: number;
  readonly differences: readonly MergeDifference[];
  /** Own row of each recording of the other store. */
  readonly rowOf: ReadonlyMap<number, number>;
}

/**
 * Brings recordings in, byte for byte. One that both stores hold must be the same; where one store holds it only up to
 * some entry (never closed there), the rest is added. Throws where the two hold different things under one id.
 */
export function mergeRecordings(
  own: Database.Database,
  other: Database.Database,
  trialIdOf: ReadonlyMap<string, string>,
): MergedRecordings {
  const find = own.prepare<[string], Row>('SELECT * FROM recordings WHERE recording_id = ?');
  const insert = own.prepare(
    'INSERT INTO recordings (recording_id, trial_id, simulated, head_text) VALUES (?, ?, ?, ?)',
  );
  const differences: MergeDifference[] = [];
  const rowOf = new Map<number, number>();
  let added = 0;
  let continued = 0;
  for (const theirs of other.prepare<[], Row>('SELECT * FROM recordings ORDER BY recording_row').all()) {
    const trialId = theirs.trial_id === null ? null : (trialIdOf.get(theirs.trial_id) ?? theirs.trial_id);
    const ours = find.get(theirs.recording_id);
    if (ours === undefined) {
      const { recording_id, simulated, head_text } = theirs;
      const row = Number(insert.run(recording_id, trialId, simulated, head_text).lastInsertRowid);
      copyRest(own, other, row, theirs, 0);
      rowOf.set(theirs.recording_row, row);
      added += 1;
      continue;
    }
    rowOf.set(theirs.recording_row, ours.recording_row);
    if (bringFurther(own, other, ours, theirs)) continued += 1;
    if (ours.trial_id !== trialId)
      differences.push({
        kind: 'recording',
        subject: ours.recording_id,
        details: [{ what: 'trial', own: ours.trial_id ?? 'none', other: trialId ?? 'none' }],
      });
  }
  return { added, continued, differences, rowOf };
}

/** True where the other store held more of the recording, which is now here too. */
function bringFurther(own: Database.Database, other: Database.Database, ours: Row, theirs: Row): boolean {
  const sameHead = ours.head_text === theirs.head_text;
  // Both were proved by their hashes before: equal closing lines, equal recordings.
  if (ours.closing_text !== null && ours.closing_text === theirs.closing_text && sameHead) return false;
  const ourCount = entryCount(own, ours.recording_row);
  const theirCount = entryCount(other, theirs.recording_row);
  const common = Math.min(ourCount, theirCount);
  const differs = () =>
    new ExchangeError(
      'merge-recording-differs',
      exchangeRefusals.mergeRecordingDiffers(ours.recording_id),
      1,
    );
  if (bodyHash(own, ours.recording_row, common) !== bodyHash(other, theirs.recording_row, common))
    throw differs();
  if (!sameHead && !sameImport(own, other, ours, theirs)) throw differs();
  if (ours.closing_text !== null) {
    if (theirCount > ourCount || (sameHead && theirs.closing_text !== null)) throw differs();
    return false;
  }
  if (theirs.closing_text !== null && theirCount < ourCount) throw differs();
  if (theirCount <= ourCount && theirs.closing_text === null) return false;
  copyRest(own, other, ours.recording_row, theirs, ourCount);
  return true;
}

/** The same file brought in on two laptops in the same way: only the file's name and date and the program may differ. */
function sameImport(own: Database.Database, other: Database.Database, ours: Row, theirs: Row): boolean {
  const label = /^(?:made-at|program|imported-from): .*$/gm;
  const imported = (database: Database.Database, row: number) =>
    database
      .prepare<[number], string>('SELECT file_sha256 || read_as FROM imports WHERE recording_row = ?')
      .pluck()
      .get(row);
  const first = imported(own, ours.recording_row);
  return (
    first !== undefined &&
    first === imported(other, theirs.recording_row) &&
    ours.head_text.replace(label, '') === theirs.head_text.replace(label, '') &&
    entryCount(own, ours.recording_row) === entryCount(other, theirs.recording_row)
  );
}

function copyRest(
  own: Database.Database,
  other: Database.Database,
  row: number,
  theirs: Row,
  from: number,
): void {
  const insert = own.prepare(
    'INSERT INTO recording_blocks (recording_row, first_entry, entry_count, body_text) VALUES (?, ?, ?, ?)',
  );
  let stored = from;
  for (const part of recordingBody(other, theirs.recording_row, { from })) {
    insert.run(row, stored, part.entries, part.text);
    stored += part.entries;
  }
  if (theirs.closing_text !== null)
    own
      .prepare('UPDATE recordings SET closing_text = ? WHERE recording_row = ?')
      .run(theirs.closing_text, row);
}
