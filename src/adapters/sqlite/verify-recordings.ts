import type Database from 'better-sqlite3';
import type { StoreProblem } from '../../core/exchange/StoreVerification.ts';
import { createRecordingParser } from '../../core/recording/create-recording-parser.ts';
import { formatClosing } from '../../core/recording/format-closing.ts';
import { parseRecordingHead } from '../../core/recording/parse-recording-head.ts';
import { verificationDetails } from '../../core/text/verification-text.ts';
import { createNativeHasher } from './create-native-hasher.ts';

interface Row {
  recording_row: number;
  recording_id: string;
  simulated: 0 | 1;
  head_text: string;
  closing_text: string | null;
}

interface Block {
  first_entry: number;
  entry_count: number;
  body_text: string;
}

/** Proves each closed recording by its count and hash, and reads each that was never closed to its end. */
export function verifyRecordings(database: Database.Database): {
  readonly recordings: number;
  readonly notClosed: readonly string[];
  readonly problems: readonly StoreProblem[];
} {
  const all = database.prepare<[], Row>('SELECT * FROM recordings ORDER BY recording_row');
  const blocks = database.prepare<[number], Block>(
    'SELECT first_entry, entry_count, body_text FROM recording_blocks WHERE recording_row = ? ORDER BY first_entry',
  );
  const notClosed: string[] = [];
  const problems: StoreProblem[] = [];
  let recordings = 0;
  for (const row of all.iterate()) {
    recordings += 1;
    const detail = whatIsWrong(row, blocks.iterate(row.recording_row));
    if (detail !== null) problems.push({ kind: 'recording', subject: row.recording_id, detail });
    else if (row.closing_text === null) notClosed.push(row.recording_id);
  }
  return { recordings, notClosed, problems };
}

function whatIsWrong(row: Row, blocks: Iterable<Block>): string | null {
  const head = headTrouble(row);
  const hasher = createNativeHasher();
  hasher.update(row.head_text);
  const parser = row.closing_text === null && head === null ? createRecordingParser() : null;
  parser?.accept(row.head_text);
  let entries = 0;
  let gap: string | null = null;
  for (const block of blocks) {
    if (block.first_entry !== entries) gap ??= verificationDetails.blockMissing(entries, block.first_entry);
    entries += lineFeeds(block.body_text);
    if (entries !== block.first_entry + block.entry_count)
      gap ??= verificationDetails.blockCount(
        block.first_entry,
        block.entry_count,
        lineFeeds(block.body_text),
      );
    hasher.update(block.body_text);
    parser?.accept(block.body_text);
  }
  if (row.closing_text !== null) {
    const came = formatClosing(entries, hasher.digestHex());
    if (came !== row.closing_text) return verificationDetails.altered(row.closing_text, came);
  }
  return head ?? gap ?? (parser === null ? null : brokenLine(parser.finish()));
}

function brokenLine(
  soundness: ReturnType<ReturnType<typeof createRecordingParser>['finish']>,
): string | null {
  return soundness.kind === 'broken' ? verificationDetails.brokenLine(soundness.lineNumber) : null;
}

/** The head can be read and says what the table says. */
function headTrouble(row: Row): string | null {
  try {
    const lines = row.head_text.split('\n');
    if (lines.at(-2) !== 'begin') return verificationDetails.headCut;
    const head = parseRecordingHead(lines.slice(1, -2));
    if (head.recordingId !== row.recording_id)
      return verificationDetails.headDiffers('recording-id', row.recording_id, head.recordingId);
    const simulated = row.simulated === 1;
    return head.simulated === simulated
      ? null
      : verificationDetails.headDiffers('simulated', String(simulated), String(head.simulated));
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

function lineFeeds(text: string): number {
  let count = 0;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) count += 1;
  return count;
}
