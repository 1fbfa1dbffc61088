import { readFileSync, statSync } from 'node:fs';
import { fileRefusals } from '../../core/text/file-refusals.ts';
import { FileError, readingError } from './FileError.ts';

/** Above this a file is no log of a trial: an hour at 1,000 lines/s of 60 bytes is 216 MB. */
const LARGEST_MEGABYTES = 400;

/** Bytes of another logger's file. Throws a FileError for a missing, forbidden or empty file, a folder, or one too large. */
export function readLoggerBytes(path: string): Uint8Array {
  try {
    const { size } = statSync(path);
    const megabytes = Math.ceil(size / 1e6);
    if (megabytes > LARGEST_MEGABYTES) {
      throw new FileError('file-too-large', path, fileRefusals.tooLarge(path, megabytes, LARGEST_MEGABYTES));
    }
    if (size === 0) throw new FileError('file-empty', path, fileRefusals.empty(path));
    return readFileSync(path);
  } catch (error) {
    throw readingError(error, path);
  }
}
