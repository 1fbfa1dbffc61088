import { readFileSync, statSync } from 'node:fs';
import { fileRefusals } from '../../core/text/file-refusals.ts';
import { decodeText } from './decode-text.ts';
import { FileError, readingError } from './FileError.ts';

/** Above this a file is no log of a trial: an hour at 1,000 lines/s of 60 bytes is 216 MB. */
const LARGEST_MEGABYTES = 400;
/** Controls that no text log holds; a broken log may hold a few, a binary file holds many. */
const NO_TEXT = /[\x00-\x08\x0e-\x1a\x1c-\x1f]/g;

/**
 * Whole text of another logger's file. Throws a FileError for a missing, forbidden, empty or binary file, a folder,
 * or one too large to be a log.
 */
export function readLoggerText(path: string): string {
  const text = decodeText(readBytes(path));
  if (text.trim() === '') throw new FileError('file-empty', path, fileRefusals.empty(path));
  const head = text.slice(0, 65_536);
  const controls = head.match(NO_TEXT)?.length ?? 0;
  if (controls > Math.max(8, head.length / 50)) {
    throw new FileError('file-binary', path, fileRefusals.binary(path));
  }
  return text;
}

function readBytes(path: string): Uint8Array {
  try {
    const megabytes = Math.ceil(statSync(path).size / 1e6);
    if (megabytes > LARGEST_MEGABYTES) {
      const refusal = fileRefusals.tooLarge(path, megabytes, LARGEST_MEGABYTES);
      throw new FileError('file-too-large', path, refusal);
    }
    return readFileSync(path);
  } catch (error) {
    throw readingError(error, path);
  }
}
