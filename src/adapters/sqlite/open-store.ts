import type { RecordingWriter, Store } from '../../core/store/Store.ts';
import { assemblyTable } from './assembly-table.ts';
import { closingTable } from './closing-table.ts';
import { createBlockWriter } from './create-block-writer.ts';
import { cycleTable } from './cycle-table.ts';
import { exchangeTable } from './exchange-table.ts';
import { keptTraceTable } from './kept-trace-table.ts';
import { openDatabase } from './open-database.ts';
import { pressTable } from './press-table.ts';
import { probeTable } from './probe-table.ts';
import { recipeTable } from './recipe-table.ts';
import { recordingTable } from './recording-table.ts';
import { runTable } from './run-table.ts';
import { settingTable } from './setting-table.ts';
import { hostTimer, type Timer } from './Timer.ts';
import { translateSqliteError, translatingErrors } from './translate-sqlite-error.ts';
import { trialTable } from './trial-table.ts';

export interface OpenStoreOptions {
  /** The store's file; made with its folder where missing. `:memory:` keeps everything in memory. */
  readonly path: string;
  /** Only reads; the file must exist. Other programs may write meanwhile. */
  readonly readonly?: boolean;
  /** How long to wait for another program that is writing, ms. */
  readonly busyTimeoutMs?: number;
  readonly timer?: Timer;
  /**
   * Hears when entries could not be put on disk (full, gone, held by another program). They are kept and tried
   * again, every tenth of a second and with each call of `flush`. Without it, the next `append` throws.
   */
  readonly onTrouble?: (error: unknown) => void;
}

/** Opens the store. Throws a StoreError that says what is wrong with the file and what to do. */
export function openStore(options: OpenStoreOptions): Store {
  const { path, readonly = false, busyTimeoutMs = 5_000, timer = hostTimer, onTrouble } = options;
  const { database, durability } = openDatabase({ path, readonly, busyTimeoutMs });
  const recordings = recordingTable(database);
  const writers = new Set<RecordingWriter>();

  const isOpen = () => database.open;

  const startRecording: Store['startRecording'] = (head) => {
    const { recordingRow, hasher } = recordings.begin(head);
    const writer = createBlockWriter({
      database,
      recordingId: head.recordingId,
      recordingRow,
      hasher,
      timer,
      busyTimeoutMs,
      onTrouble: onTrouble && ((error) => onTrouble(translateSqliteError(error, path))),
      onClosed: () => writers.delete(writer),
    });
    writers.add(writer);
    return translatingErrors(writer, path, isOpen);
  };

  const close = () => {
    process.off('exit', closeAtExit);
    if (!database.open) return;
    try {
      for (const writer of writers) writer.flush();
    } finally {
      writers.clear();
      database.close();
    }
  };
  // An exit in the middle of a trial still puts what has arrived on disk.
  const closeAtExit = () => {
    try {
      close();
    } catch (error) {
      // Too late to ask for anything; the entries that wait are lost, so it must be said.
      onTrouble?.(translateSqliteError(error, path));
    }
  };
  process.on('exit', closeAtExit);

  const { begin: _begin, row, ...reading } = recordings;
  return translatingErrors<Store>(
    {
      path,
      durability,
      ...pressTable(database),
      ...assemblyTable(database),
      ...probeTable(database),
      ...trialTable(database),
      ...reading,
      startRecording,
      ...runTable(database, row),
      ...recipeTable(database),
      ...cycleTable(database),
      ...closingTable(database),
      ...settingTable(database),
      ...keptTraceTable(database),
      exchange: translatingErrors(exchangeTable(database), path, isOpen),
      close,
    },
    path,
    isOpen,
  );
}
