import { formatRecording } from '../../core/recording/format-recording.ts';
import type { RecordingEntry, RecordingHead } from '../../core/recording/RecordingEntry.ts';
import { createNativeHasher } from './create-native-hasher.ts';
import { writeTextFile } from './write-text-file.ts';

/** Ending of a recording's file name. */
export const RECORDING_FILE_ENDING = '.dwell.txt';

/** Writes a whole recording, closed and sound, to a file: either all of it is there in the end, or what was there before. */
export function writeRecordingFile(
  path: string,
  head: RecordingHead,
  entries: Iterable<RecordingEntry>,
): void {
  writeTextFile(path, formatRecording(head, entries, createNativeHasher));
}
