import {
  closeSync,
  copyFileSync,
  existsSync,
  fsyncSync,
  openSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type Database from 'better-sqlite3';
import type { BackupReport } from '../../core/exchange/BackupReport.ts';
import { ExchangeError } from '../../core/exchange/ExchangeError.ts';
import type { StoreVerification } from '../../core/exchange/StoreVerification.ts';
import { exchangeRefusals } from '../../core/text/exchange-text.ts';
import { storeRefusals } from '../../core/text/store-refusals.ts';
import { openDatabase } from './open-database.ts';
import { openForReading } from './open-for-reading.ts';
import { StoreError } from './StoreError.ts';
import { sameFile } from './same-file.ts';
import { isFolder, translateSqliteError } from './translate-sqlite-error.ts';
import { verifyStore } from './verify-store.ts';

const BUSY_TIMEOUT_MS = 5_000;
/** Files that SQLite may keep beside a database. */
const COMPANIONS = ['-wal', '-shm', '-journal'];

export interface BackUpOptions {
  readonly path: string;
  readonly to: string;
  /** Put the new backup in the place of one that is there. */
  readonly replace: boolean;
}

/**
 * Copies a store while others write to it: one state of it, as of the moment the copying began (`VACUUM INTO`). The copy
 * is written under another name, put on disk, checked like any store, and only then given its name; when anything
 * fails, nothing is left behind and what was there before is unchanged.
 */
export function backUpStore({ path, to, replace }: BackUpOptions): BackupReport {
  checkPlace(path, to, replace);
  const beside = join(dirname(to), `.${basename(to)}.${process.pid}.part`);
  try {
    copyInto(path, beside);
    synchronise(beside);
    const verification = verifyCopy(beside);
    const { size } = statSync(beside);
    // Linked to the new name only now; on the same disk this is one step.
    renameSync(beside, to);
    synchronise(dirname(to));
    return { path: to, bytes: size, verification: { ...verification, path: to } };
  } catch (error) {
    throw translateFileError(error, to);
  } finally {
    // Renamed by now, unless something failed; its companions never are.
    removeWithCompanions(beside);
  }
}

function checkPlace(path: string, to: string, replace: boolean): void {
  if (isFolder(to)) throw new StoreError('store-is-folder', storeRefusals.folder(to));
  if (!existsSync(path)) throw new StoreError('store-missing', storeRefusals.missing(path));
  if (!existsSync(to)) return;
  if (sameFile(path, to)) throw new ExchangeError('backup-same-file', exchangeRefusals.backupSameFile(to));
  if (!replace) throw new ExchangeError('backup-exists', exchangeRefusals.backupExists(to));
  // A program that has the old file open would write its log into the new one.
  const log = statSync(`${to}-wal`, { throwIfNoEntry: false });
  if (log !== undefined && log.size > 0) throw new StoreError('store-busy', storeRefusals.busy(to));
}

function copyInto(path: string, beside: string): void {
  rmSync(beside, { force: true });
  const database = openAnyAge(path);
  try {
    database.prepare('VACUUM INTO ?').run(beside);
  } catch (error) {
    throw translateSqliteError(error, path);
  } finally {
    database.close();
  }
}

/** Also a store that an older program left: it is wanted most before it is brought up to date. */
function openAnyAge(path: string): Database.Database {
  try {
    return openDatabase({ path, readonly: true, busyTimeoutMs: BUSY_TIMEOUT_MS }).database;
  } catch (error) {
    if (isOlder(error)) return openForReading(path, BUSY_TIMEOUT_MS);
    throw error;
  }
}

/** Checks the copy; one of an older program by a copy of it that is brought up to date first. */
function verifyCopy(path: string): StoreVerification {
  try {
    return verifyStore(path);
  } catch (error) {
    if (!isOlder(error)) throw error;
    const today = `${path}-today`;
    try {
      copyFileSync(path, today);
      openDatabase({ path: today, readonly: false, busyTimeoutMs: BUSY_TIMEOUT_MS }).database.close();
      return verifyStore(today);
    } finally {
      removeWithCompanions(today);
    }
  }
}

const isOlder = (error: unknown): boolean => error instanceof StoreError && error.code === 'store-older';

function removeWithCompanions(path: string): void {
  for (const ending of ['', ...COMPANIONS]) rmSync(`${path}${ending}`, { force: true });
}

function synchronise(path: string): void {
  // A folder cannot be opened like this on every system; there its entry is on disk when the system writes it.
  if (process.platform === 'win32' && isFolder(path)) return;
  const file = openSync(path, isFolder(path) ? 'r' : 'r+');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

function translateFileError(error: unknown, to: string): unknown {
  if (!(error instanceof Error) || !('syscall' in error) || !('code' in error)) return error;
  return new StoreError('store-cannot-open', storeRefusals.folderMissing(to, String(error.code)), error);
}
