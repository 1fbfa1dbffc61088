import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync } from 'node:fs';
import { readingError } from '../../adapters/files/FileError.ts';

/** SHA-256 of a file's bytes, read piece by piece. Throws a FileError. */
export function hashFile(path: string): string {
  const hash = createHash('sha256');
  const buffer = new Uint8Array(1 << 16);
  let file: number | null = null;
  try {
    file = openSync(path, 'r');
    for (;;) {
      const count = readSync(file, buffer, 0, buffer.length, null);
      if (count === 0) return hash.digest('hex');
      hash.update(buffer.subarray(0, count));
    }
  } catch (error) {
    throw readingError(error, path);
  } finally {
    if (file !== null) closeSync(file);
  }
}
