import type Database from 'better-sqlite3';
import { createNativeHasher } from './create-native-hasher.ts';

export interface BodyPart {
  readonly text: string;
  readonly entries: number;
}

/** Entries that a recording holds. */
export function entryCount(database: Database.Database, recordingRow: number): number {
  return database
    .prepare<[number], number>(
      'SELECT coalesce(max(first_entry + entry_count), 0) FROM recording_blocks WHERE recording_row = ?',
    )
    .pluck()
    .get(recordingRow) as number;
}

/** A recording's entries from number `from` (0 is the first) up to before number `to`, in parts. */
export function* recordingBody(
  database: Database.Database,
  recordingRow: number,
  { from = 0, to = Number.POSITIVE_INFINITY }: { readonly from?: number; readonly to?: number } = {},
): Generator<BodyPart> {
  const blocks = database.prepare<
    [number, number],
    { first_entry: number; entry_count: number; body_text: string }
  >(`SELECT first_entry, entry_count, body_text FROM recording_blocks
    WHERE recording_row = ? AND first_entry + entry_count > ? ORDER BY first_entry`);
  for (const block of blocks.iterate(recordingRow, from)) {
    const first = Math.max(from - block.first_entry, 0);
    const last = Math.min(to - block.first_entry, block.entry_count);
    if (last <= first) return;
    const text = block.body_text.slice(afterLine(block.body_text, first), afterLine(block.body_text, last));
    yield { text, entries: last - first };
  }
}

/** SHA-256 of the first `entries` entries. */
export function bodyHash(database: Database.Database, recordingRow: number, entries: number): string {
  const hasher = createNativeHasher();
  for (const part of recordingBody(database, recordingRow, { to: entries })) hasher.update(part.text);
  return hasher.digestHex();
}

/** Where line number `lines` (0 is the first) begins. */
function afterLine(text: string, lines: number): number {
  let at = 0;
  for (let line = 0; line < lines; line += 1) at = text.indexOf('\n', at) + 1;
  return at;
}
