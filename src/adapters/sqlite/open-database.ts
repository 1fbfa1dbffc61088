import { existsSync, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { storeRefusals } from '../../core/text/store-refusals.ts';
import { migrate } from './migrate.ts';
import { openForReading } from './open-for-reading.ts';
import { StoreError } from './StoreError.ts';
import { isFolder, translateSqliteError } from './translate-sqlite-error.ts';

export interface OpenDatabaseOptions {
  readonly path: string;
  readonly readonly: boolean;
  /** How long to wait for another program that holds the file. */
  readonly busyTimeoutMs: number;
}

export interface OpenDatabase {
  readonly database: Database.Database;
  readonly durability: { readonly journalMode: string; readonly synchronous: string };
}

const SYNCHRONOUS = ['OFF', 'NORMAL', 'FULL', 'EXTRA'];

/**
 * Opens (or makes) the store's file: write-ahead log, then synchronous FULL (the log would lower it), both read
 * back and refused if otherwise; then brings its tables up to date.
 */
export function openDatabase(options: OpenDatabaseOptions): OpenDatabase {
  const { path } = options;
  const inMemory = path === ':memory:';
  if (!inMemory) checkPlace(path, options.readonly);
  const giveUpAt = performance.now() + options.busyTimeoutMs;
  for (;;) {
    try {
      return openOnce(options, inMemory);
    } catch (error) {
      const translated = translateSqliteError(error, path);
      // Turning a new file to write-ahead logging does not wait by itself while a second program does the same.
      const busy = translated instanceof StoreError && translated.code === 'store-busy';
      if (!busy || performance.now() > giveUpAt) throw translated;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
    }
  }
}

function openOnce(options: OpenDatabaseOptions, inMemory: boolean): OpenDatabase {
  const readonly = options.readonly && !inMemory;
  const database = readonly
    ? openForReading(options.path, options.busyTimeoutMs)
    : new Database(options.path, { timeout: options.busyTimeoutMs });
  try {
    if (!options.readonly) database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    // On macOS a plain fsync leaves data in the drive's cache; elsewhere this does nothing.
    database.pragma('fullfsync = ON');
    database.pragma('checkpoint_fullfsync = ON');
    database.pragma('foreign_keys = ON');
    migrate(database, {
      path: options.path,
      readonly: options.readonly,
      appliedAt: new Date().toISOString(),
    });
    const durability = readDurability(database);
    const fits = durability.synchronous === 'FULL' && (inMemory || durability.journalMode === 'wal');
    if (!fits && !readonly) {
      const came = `${durability.journalMode} and ${durability.synchronous}`;
      throw new StoreError('store-no-wal', storeRefusals.noWal(options.path, came));
    }
    return { database, durability };
  } catch (error) {
    database.close();
    throw error;
  }
}

function readDurability(database: Database.Database): OpenDatabase['durability'] {
  const level = database.pragma('synchronous', { simple: true });
  return {
    journalMode: String(database.pragma('journal_mode', { simple: true })),
    synchronous: SYNCHRONOUS[Number(level)] ?? String(level),
  };
}

function checkPlace(path: string, readonly: boolean): void {
  if (isFolder(path)) throw new StoreError('store-is-folder', storeRefusals.folder(path));
  if (readonly) {
    if (!existsSync(path)) throw new StoreError('store-missing', storeRefusals.missing(path));
    return;
  }
  try {
    mkdirSync(dirname(path), { recursive: true });
  } catch (error) {
    const cause = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    throw new StoreError('store-cannot-open', storeRefusals.folderMissing(path, cause), error);
  }
}
