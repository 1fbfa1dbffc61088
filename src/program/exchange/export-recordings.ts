import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { writingError } from '../../adapters/files/FileError.ts';
import { writeTextFile } from '../../adapters/files/write-text-file.ts';
import { recordingFileName } from '../../core/exchange/recording-file-name.ts';
import type { Store } from '../../core/store/Store.ts';

/** Writes recordings into a folder, byte for byte as stored, one file each; returns the files. */
export function exportRecordings(
  store: Store,
  recordingIds: readonly string[],
  folder: string,
): readonly string[] {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw writingError(error, folder);
  }
  return recordingIds.flatMap((recordingId) => {
    const text = store.recordingText(recordingId);
    if (text === undefined) return [];
    const path = join(folder, recordingFileName(recordingId));
    writeTextFile(path, text);
    return [path];
  });
}
