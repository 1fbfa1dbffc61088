import { createRecordingParser, type RecordingParser } from '../../core/recording/create-recording-parser.ts';
import type { Hasher } from '../../core/recording/Hasher.ts';
import type { RecordingEntry, RecordingSoundness } from '../../core/recording/RecordingEntry.ts';
import { RecordingError } from '../../core/recording/RecordingError.ts';
import type { StoredRecording } from '../../core/store/Store.ts';
import { recordingRefusals } from '../../core/text/recording-refusals.ts';
import { createNativeHasher } from './create-native-hasher.ts';

/** Where only the entries are wanted, nothing needs hashing. */
const noHasher = (): Hasher => ({ update: () => {}, digestHex: () => '' });

/** A recording read from its text, piece by piece as often as it is asked for; `pieces` begins with the head. */
export function storedRecording(pieces: () => Iterable<string>): StoredRecording {
  const parser = createRecordingParser(noHasher);
  for (const piece of pieces()) {
    parser.accept(piece);
    if (parser.head !== null) break;
  }
  if (parser.head === null)
    throw new RecordingError('recording-head-cut', ...recordingRefusals.headCut(null));
  return {
    head: parser.head,
    entries: () => entriesOf(pieces(), createRecordingParser(noHasher)),
    get soundness(): RecordingSoundness {
      const whole = createRecordingParser(createNativeHasher);
      for (const piece of pieces()) whole.accept(piece);
      return whole.finish();
    },
  };
}

function* entriesOf(pieces: Iterable<string>, parser: RecordingParser): Generator<RecordingEntry> {
  for (const piece of pieces) yield* parser.accept(piece);
}
