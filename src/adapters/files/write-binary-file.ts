import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { writingError } from './FileError.ts';

/**
 * Writes bytes to a file under another name beside it, puts them on disk, then gives it its name. When anything
 * fails, what was there before is unchanged and nothing is left behind. Throws a FileError.
 */
export function writeBinaryFile(path: string, bytes: Uint8Array): void {
  const beside = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  let made = false;
  try {
    const file = openSync(beside, 'w');
    made = true;
    try {
      for (let from = 0; from < bytes.length; ) from += writeSync(file, bytes, from);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(beside, path);
  } catch (error) {
    if (made) rmSync(beside, { force: true });
    throw writingError(error, path);
  }
}
