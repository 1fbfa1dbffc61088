import { closeSync, openSync, readSync } from 'node:fs';
import { decodeText } from './decode-text.ts';
import { readingError } from './FileError.ts';

/** First characters of a file, to tell what it is, decoded as far as they are whole. At most `bytes` are read. */
export function readTextFileHead(path: string, bytes = 4_096): string {
  try {
    const file = openSync(path, 'r');
    try {
      const buffer = new Uint8Array(bytes);
      return decodeText(buffer.subarray(0, readSync(file, buffer, 0, bytes, 0)), { cutAtEnd: true });
    } finally {
      closeSync(file);
    }
  } catch (error) {
    throw readingError(error, path);
  }
}
