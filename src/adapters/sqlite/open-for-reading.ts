import { readFileSync, statSync } from 'node:fs';
import Database from 'better-sqlite3';

/** Where SQLite's file header keeps its write and read version (file format, section 1.3): 1 rollback journal, 2 log. */
const VERSION_BYTES = [18, 19];

/**
 * Opens a store that is only read. Beside a store with a write-ahead log SQLite must write a shared index; where that
 * is not allowed (a folder or medium for reading only) and no log waits to be taken in, a copy in memory is read.
 */
export function openForReading(path: string, busyTimeoutMs: number): Database.Database {
  const database = new Database(path, { readonly: true, fileMustExist: true, timeout: busyTimeoutMs });
  try {
    database.pragma('schema_version');
    return database;
  } catch (error) {
    database.close();
    const code = error instanceof Database.SqliteError ? error.code : '';
    if (!/^SQLITE_(CANTOPEN|READONLY)/.test(code) || logWaits(path)) throw error;
    return copyInMemory(path);
  }
}

function logWaits(path: string): boolean {
  const log = statSync(`${path}-wal`, { throwIfNoEntry: false });
  return log !== undefined && log.size > 0;
}

function copyInMemory(path: string): Database.Database {
  const bytes = readFileSync(path);
  for (const at of VERSION_BYTES) bytes[at] = 1;
  return new Database(bytes, { readonly: true });
}
