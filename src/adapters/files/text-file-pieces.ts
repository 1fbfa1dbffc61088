import { closeSync, openSync, readSync } from 'node:fs';
import { readingError } from './FileError.ts';

/** Text of a UTF-8 file in pieces of at most 64 KiB, cut anywhere between characters; memory stays bounded. */
export function* textFilePieces(path: string): Generator<string> {
  const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
  const buffer = new Uint8Array(65_536);
  let file: number | null = null;
  try {
    file = openSync(path, 'r');
    for (;;) {
      const count = readSync(file, buffer, 0, buffer.length, null);
      if (count === 0) break;
      yield decoder.decode(buffer.subarray(0, count), { stream: true });
    }
    yield decoder.decode();
  } catch (error) {
    throw readingError(error, path);
  } finally {
    if (file !== null) closeSync(file);
  }
}
