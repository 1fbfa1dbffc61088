import { recordingRefusals } from '../text/recording-refusals.ts';
import { createSha256Hasher } from './create-sha256-hasher.ts';
import type { CreateHasher } from './Hasher.ts';
import { looksLikeRecording, RECORDING_FIRST_LINE } from './looks-like-recording.ts';
import { parseEntry } from './parse-entry.ts';
import { parseRecordingHead } from './parse-recording-head.ts';
import type { RecordingEntry, RecordingHead, RecordingSoundness } from './RecordingEntry.ts';
import { RecordingError } from './RecordingError.ts';

/** A line longer than this is no line of a recording; keeps memory bounded whatever the file is. */
const LONGEST_LINE = 1 << 20;
const CLOSING = /^end (\d{1,15}) sha256 ([0-9a-f]{64})$/;

export interface RecordingParser {
  /** Takes the next piece of the text, cut anywhere; returns the entries that became whole. */
  accept(text: string): readonly RecordingEntry[];
  /** Null until the head is whole. */
  readonly head: RecordingHead | null;
  /** No more text: how the recording ended. Throws a RecordingError if not even the head is whole. */
  finish(): RecordingSoundness;
}

/**
 * Reads a recording piece by piece. Entries before a cut or a broken line are given, a last line without its
 * line feed is not (it may be cut), except the closing line, whose length is known. A byte order mark and
 * CR LF, which an editor may have put there, are read as nothing and LF, also by the hash. Throws a RecordingError as soon as the text cannot be a recording.
 */
export function createRecordingParser(createHasher: CreateHasher = createSha256Hasher): RecordingParser {
  const hasher = createHasher();
  const headLines: string[] = [];
  let rest = '';
  let lineNumber = 0;
  let entries = 0;
  let head: RecordingHead | null = null;
  let soundness: RecordingSoundness | null = null;

  const takeHeadLine = (line: string) => {
    if (lineNumber === 1) checkFirstLine(line);
    else if (line === 'begin') head = parseRecordingHead(headLines);
    else headLines.push(line);
  };

  const takeClosing = (closing: RegExpExecArray) => {
    const expected = `${closing[1]} entries, SHA-256 ${closing[2]}`;
    const came = `${entries} entries, SHA-256 ${hasher.digestHex()}`;
    soundness = expected === came ? { kind: 'sound' } : { kind: 'altered', expected, came };
  };

  const takeLine = (received: string, found: RecordingEntry[]) => {
    const line = lineNumber === 0 ? received.replace(/^\uFEFF/, '') : received;
    lineNumber += 1;
    if (soundness !== null) {
      if (soundness.kind === 'sound' && line !== '') {
        soundness = { kind: 'altered', expected: 'nothing after the closing line', came: line.slice(0, 60) };
      }
      return;
    }
    if (head === null) {
      takeHeadLine(line);
    } else {
      const closing = CLOSING.exec(line);
      if (closing !== null) return takeClosing(closing);
      const entry = line.length > LONGEST_LINE ? null : parseEntry(line);
      if (entry === null) {
        soundness = { kind: 'broken', lineNumber, text: line.slice(0, 200) };
        return;
      }
      entries += 1;
      found.push(entry);
    }
    hasher.update(`${line}\n`);
  };

  return {
    get head() {
      return head;
    },
    accept(text) {
      const found: RecordingEntry[] = [];
      rest += text;
      let from = 0;
      for (let feed = rest.indexOf('\n'); feed >= 0; feed = rest.indexOf('\n', from)) {
        takeLine(rest.slice(from, rest[feed - 1] === '\r' && feed > from ? feed - 1 : feed), found);
        from = feed + 1;
      }
      rest = rest.slice(from);
      if (rest.length > LONGEST_LINE) {
        if (head === null) throw headCut(headLines);
        soundness ??= { kind: 'broken', lineNumber: lineNumber + 1, text: rest.slice(0, 200) };
        rest = '';
      }
      return found;
    },
    finish() {
      if (lineNumber === 0) checkFirstLine(rest);
      if (head === null) throw headCut(headLines);
      if (soundness === null) {
        const closing = CLOSING.exec(rest);
        if (closing !== null) takeClosing(closing);
      } else if (rest !== '') takeLine(rest, []);
      return soundness ?? { kind: 'not-closed' };
    },
  };
}

function checkFirstLine(line: string): void {
  const plain = line.replace(/^\uFEFF/, '');
  if (plain === RECORDING_FIRST_LINE) return;
  if (looksLikeRecording(plain)) {
    const version = plain.slice(plain.indexOf(':') + 1).trim();
    throw new RecordingError('recording-version', ...recordingRefusals.otherVersion(version));
  }
  throw new RecordingError('recording-not-one', ...recordingRefusals.notOne(plain.slice(0, 60)));
}

function headCut(headLines: readonly string[]): RecordingError {
  return new RecordingError(
    'recording-head-cut',
    ...recordingRefusals.headCut(headLines.at(-1)?.slice(0, 60) ?? null),
  );
}
