import { createSha256Hasher } from './create-sha256-hasher.ts';
import { formatClosing } from './format-closing.ts';
import { formatEntry } from './format-entry.ts';
import { formatRecordingHead } from './format-recording-head.ts';
import type { CreateHasher } from './Hasher.ts';
import type { RecordingEntry, RecordingHead } from './RecordingEntry.ts';

/** A whole recording as text, in pieces: head, entries, closing line. */
export function* formatRecording(
  head: RecordingHead,
  entries: Iterable<RecordingEntry>,
  createHasher: CreateHasher = createSha256Hasher,
): Generator<string> {
  const hasher = createHasher();
  let count = 0;
  const headText = formatRecordingHead(head);
  hasher.update(headText);
  yield headText;
  for (const entry of entries) {
    const line = formatEntry(entry);
    hasher.update(line);
    count += 1;
    yield line;
  }
  yield formatClosing(count, hasher.digestHex());
}
