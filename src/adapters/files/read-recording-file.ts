import { createRecordingParser, type RecordingParser } from '../../core/recording/create-recording-parser.ts';
import type { Hasher } from '../../core/recording/Hasher.ts';
import type {
  RecordingEntry,
  RecordingHead,
  RecordingSoundness,
} from '../../core/recording/RecordingEntry.ts';
import { RecordingError } from '../../core/recording/RecordingError.ts';
import { fileRefusals } from '../../core/text/file-refusals.ts';
import { recordingRefusals } from '../../core/text/recording-refusals.ts';
import { createNativeHasher } from './create-native-hasher.ts';
import { FileError } from './FileError.ts';
import { textFilePieces } from './text-file-pieces.ts';

/** A recording's file; read again from the start for each round over its entries, never held in memory as a whole. */
export interface RecordingFile {
  readonly path: string;
  readonly head: RecordingHead;
  /** Entries as far as they are whole, in order. */
  entries(): Iterable<RecordingEntry>;
  /** Known at once after a round over all entries; before, the file is read through for it. */
  readonly soundness: RecordingSoundness;
}

const noHasher = (): Hasher => ({ update: () => {}, digestHex: () => '' });

/** Opens a recording's file. Throws a FileError for a file that cannot be read, a RecordingError where the head is not whole. */
export function readRecordingFile(path: string): RecordingFile {
  const head = readHead(path);
  let known: RecordingSoundness | null = null;
  function* entries(): Generator<RecordingEntry> {
    const parser = createRecordingParser(createNativeHasher);
    for (const piece of textFilePieces(path)) yield* parser.accept(piece);
    known = parser.finish();
  }
  return {
    path,
    head,
    entries,
    get soundness() {
      if (known === null) for (const _entry of entries());
      return known ?? { kind: 'not-closed' };
    },
  };
}

function readHead(path: string): RecordingHead {
  const parser: RecordingParser = createRecordingParser(noHasher);
  let empty = true;
  for (const piece of textFilePieces(path)) {
    if (piece !== '') empty = false;
    parser.accept(piece);
    if (parser.head !== null) return parser.head;
  }
  if (empty) throw new FileError('file-empty', path, fileRefusals.empty(path));
  parser.finish();
  throw new RecordingError('recording-head-cut', ...recordingRefusals.headCut(null));
}
