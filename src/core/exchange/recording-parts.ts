import type { RecordingPart } from './StoreExchange.ts';

/** Lines kept together in one part. */
const LINES_TOGETHER = 2_000;

/**
 * A recording's text, in pieces cut anywhere, as head, groups of whole entries, and closing line. A byte order mark and
 * CR LF are taken off as a recording's reader takes them off; a last line that is cut is left out.
 * The text is taken to be a recording that was read before.
 */
export function* recordingParts(pieces: Iterable<string>): Generator<RecordingPart> {
  let place: 'head' | 'entries' | 'closed' = 'head';
  let text = '';
  let lines = 0;
  for (const line of wholeLines(pieces)) {
    if (place === 'closed') continue;
    if (place === 'entries' && line.startsWith('end ')) {
      if (lines > 0) yield { kind: 'entries', text, entries: lines };
      yield { kind: 'closing', text: `${line}\n` };
      place = 'closed';
      lines = 0;
      continue;
    }
    text += `${line}\n`;
    if (place === 'head') {
      if (line !== 'begin') continue;
      yield { kind: 'head', text };
      place = 'entries';
    } else {
      lines += 1;
      if (lines < LINES_TOGETHER) continue;
      yield { kind: 'entries', text, entries: lines };
    }
    text = '';
    lines = 0;
  }
  if (place === 'entries' && lines > 0) yield { kind: 'entries', text, entries: lines };
}

/** Lines without their ends; the last one also without a line feed where it is a closing line, whose length is known. */
function* wholeLines(pieces: Iterable<string>): Generator<string> {
  let rest = '';
  let first = true;
  for (const piece of pieces) {
    rest += piece;
    let from = 0;
    for (let feed = rest.indexOf('\n'); feed >= 0; feed = rest.indexOf('\n', from)) {
      const line = rest.slice(from, rest[feed - 1] === '\r' && feed > from ? feed - 1 : feed);
      yield first ? line.replace(/^\uFEFF/, '') : line;
      first = false;
      from = feed + 1;
    }
    rest = rest.slice(from);
  }
  if (/^end \d{1,15} sha256 [0-9a-f]{64}$/.test(rest)) yield rest;
}
