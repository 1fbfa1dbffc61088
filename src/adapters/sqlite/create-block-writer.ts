import type Database from 'better-sqlite3';
import { formatClosing } from '../../core/recording/format-closing.ts';
import { formatEntry } from '../../core/recording/format-entry.ts';
import type { Hasher } from '../../core/recording/Hasher.ts';
import type { RecordingWriter } from '../../core/store/Store.ts';
import { storeRefusals } from '../../core/text/store-refusals.ts';
import { createDelayRecord } from './create-delay-record.ts';
import { StoreError } from './StoreError.ts';
import type { Timer } from './Timer.ts';

/** Entries wait at most this long before they are committed; with the flush itself they are on disk well within 200 ms. */
export const COMMIT_AFTER_MS = 50;
/** A block is committed at once when it holds this many entries. */
const LARGEST_BLOCK = 4_096;
/** Under a flood the clock is looked at once in so many entries, since timers do not fire while the program is busy. */
const CLOCK_EVERY = 64;
/** A commit that the timer asks for waits at most this long for another program: meanwhile nothing reads the port. */
const BUSY_AT_MOST_MS = 500;
const TRY_AGAIN_AFTER_MS = 100;
/** Entries kept in memory while the disk refuses; beyond this `append` throws. */
const MOST_WAITING = 1_000_000;

export interface BlockWriterParts {
  readonly database: Database.Database;
  readonly recordingId: string;
  readonly recordingRow: number;
  /** Already holds the head. */
  readonly hasher: Hasher;
  readonly timer: Timer;
  /** How long `flush` and `close` wait for another program. */
  readonly busyTimeoutMs: number;
  readonly onTrouble: ((error: unknown) => void) | undefined;
  readonly onClosed: () => void;
}

/**
 * Writes a recording block by block: one block, one transaction, one flush to disk for all that came within
 * `COMMIT_AFTER_MS`. When the disk refuses, what waits is kept and tried again; `onTrouble` hears of it
 * each time, or where there is none the next `append` throws it (and still keeps its entry).
 */
export function createBlockWriter(parts: BlockWriterParts): RecordingWriter {
  const { database, recordingRow, timer } = parts;
  const delays = createDelayRecord();
  const insertBlock = database.prepare(
    'INSERT INTO recording_blocks (recording_row, first_entry, entry_count, body_text) VALUES (?, ?, ?, ?)',
  );
  const writeClosing = database.prepare('UPDATE recordings SET closing_text = ? WHERE recording_row = ?');
  let stored = 0;
  let waiting = 0;
  let waitingText = '';
  let oldestMs = 0;
  let cancelTimer: (() => void) | null = null;
  let closingText: string | null = null;
  let closed = false;
  let untold: { readonly error: unknown } | null = null;

  const commit = () => {
    cancelTimer?.();
    cancelTimer = null;
    if (waiting === 0) return;
    insertBlock.run(recordingRow, stored, waiting, waitingText);
    parts.hasher.update(waitingText);
    delays.add(timer.nowMs() - oldestMs);
    stored += waiting;
    waiting = 0;
    waitingText = '';
  };

  const commitOrReport = () => {
    database.pragma(`busy_timeout = ${Math.min(parts.busyTimeoutMs, BUSY_AT_MOST_MS)}`);
    try {
      commit();
    } catch (error) {
      cancelTimer = timer.after(TRY_AGAIN_AFTER_MS, commitOrReport);
      if (parts.onTrouble === undefined) untold = { error };
      else parts.onTrouble(error);
    } finally {
      database.pragma(`busy_timeout = ${parts.busyTimeoutMs}`);
    }
  };

  const checkOpen = () => {
    if (closed || closingText !== null)
      throw new StoreError('store-recording-closed', storeRefusals.recordingClosed(parts.recordingId));
  };

  const throwUntold = () => {
    const error = untold?.error;
    untold = null;
    throw error;
  };

  return {
    recordingId: parts.recordingId,
    append(entry) {
      checkOpen();
      waitingText += formatEntry(entry);
      waiting += 1;
      if (waiting === 1) {
        oldestMs = timer.nowMs();
        cancelTimer ??= timer.after(COMMIT_AFTER_MS, commitOrReport);
      } else if (waiting % LARGEST_BLOCK === 0) {
        if (waiting >= MOST_WAITING) commit();
        else commitOrReport();
      } else if (waiting % CLOCK_EVERY === 0 && waiting < LARGEST_BLOCK) {
        if (timer.nowMs() - oldestMs >= COMMIT_AFTER_MS) commitOrReport();
      }
      if (untold !== null) throwUntold();
    },
    flush() {
      checkOpen();
      commit();
    },
    close() {
      if (closed) return;
      commit();
      closingText ??= formatClosing(stored, parts.hasher.digestHex());
      writeClosing.run(closingText, recordingRow);
      closed = true;
      parts.onClosed();
    },
    commitDelay: delays.read,
  };
}
