import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync } from 'node:fs';

/** SHA-256 of a file's bytes, in hexadecimal; read in pieces, so that a large file takes no memory. */
export function fileSha256(path: string): string {
  const hash = createHash('sha256');
  const file = openSync(path, 'r');
  try {
    const buffer = new Uint8Array(1 << 16);
    for (let read = readSync(file, buffer); read > 0; read = readSync(file, buffer)) {
      hash.update(buffer.subarray(0, read));
    }
  } finally {
    closeSync(file);
  }
  return hash.digest('hex');
}

/** SHA-256 of a text that comes in pieces, as its file in UTF-8 would have. */
export function piecesSha256(pieces: Iterable<string>): string {
  const hash = createHash('sha256');
  for (const piece of pieces) hash.update(piece, 'utf8');
  return hash.digest('hex');
}
