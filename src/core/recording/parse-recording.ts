import { recordingRefusals } from '../text/recording-refusals.ts';
import { createRecordingParser } from './create-recording-parser.ts';
import { createSha256Hasher } from './create-sha256-hasher.ts';
import type { CreateHasher } from './Hasher.ts';
import type { RecordingEntry, RecordingHead, RecordingSoundness } from './RecordingEntry.ts';
import { RecordingError } from './RecordingError.ts';

export interface ParsedRecording {
  readonly head: RecordingHead;
  readonly entries: readonly RecordingEntry[];
  readonly soundness: RecordingSoundness;
}

/** A whole recording from its text, as far as it is whole. Throws a RecordingError if not even the head is. */
export function parseRecording(
  text: string,
  createHasher: CreateHasher = createSha256Hasher,
): ParsedRecording {
  const parser = createRecordingParser(createHasher);
  const entries = parser.accept(text);
  const soundness = parser.finish();
  if (parser.head === null)
    throw new RecordingError('recording-head-cut', ...recordingRefusals.headCut(null));
  return { head: parser.head, entries, soundness };
}
