import { statSync } from 'node:fs';
import { storeRefusals } from '../../core/text/store-refusals.ts';
import { StoreError } from './StoreError.ts';

/** A failure of the database as a StoreError by its code (never by its text); anything else comes back as it was. */
export function translateSqliteError(error: unknown, path: string): unknown {
  if (!(error instanceof Error) || error instanceof StoreError) return error;
  const code = 'code' in error && typeof error.code === 'string' ? error.code : '';
  if (!code.startsWith('SQLITE_')) return error;
  if (code === 'SQLITE_FULL') return new StoreError('store-disk-full', storeRefusals.diskFull(path), error);
  if (code === 'SQLITE_NOTADB')
    return new StoreError('store-not-a-store', storeRefusals.notAStore(path), error);
  if (/^SQLITE_(BUSY|LOCKED)/.test(code))
    return new StoreError('store-busy', storeRefusals.busy(path), error);
  if (/^SQLITE_(READONLY|PERM|AUTH)/.test(code)) {
    return new StoreError('store-read-only', storeRefusals.readOnly(path), error);
  }
  if (code.startsWith('SQLITE_CORRUPT'))
    return new StoreError('store-corrupt', storeRefusals.corrupt(path, code), error);
  if (code.startsWith('SQLITE_IOERR')) {
    return new StoreError('store-disk-fault', storeRefusals.diskFault(path, code), error);
  }
  if (code.startsWith('SQLITE_CANTOPEN')) {
    if (isFolder(path)) return new StoreError('store-is-folder', storeRefusals.folder(path), error);
    return new StoreError('store-cannot-open', storeRefusals.cannotOpen(path, code), error);
  }
  return new StoreError('store-failed', storeRefusals.failed(path, `${code}: ${error.message}`), error);
}

export function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    // Missing, behind a file, or not to be looked at: no folder that we can name; opening it says what is wrong.
    return false;
  }
}

/** As `translateSqliteError`; a use after the store was closed is told as such. */
export function storeTrouble(error: unknown, path: string, isOpen: boolean): unknown {
  return error instanceof TypeError && !isOpen
    ? new StoreError('store-closed', storeRefusals.closed(path), error)
    : translateSqliteError(error, path);
}

/** The same object with each method's database failures translated. */
export function translatingErrors<T extends object>(target: T, path: string, isOpen: () => boolean): T {
  const translated: Record<string, unknown> = {};
  for (const [key, member] of Object.entries(target)) {
    translated[key] =
      typeof member !== 'function'
        ? member
        : (...given: unknown[]) => {
            try {
              return member(...given);
            } catch (error) {
              throw storeTrouble(error, path, isOpen());
            }
          };
  }
  return translated as T;
}
