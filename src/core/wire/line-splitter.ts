import type { LineWholeness, ReceivedLine } from './WireEvent.ts';

export interface LineSplitterOptions {
  /** Most characters of a line, line end not counted; what is longer is reported once as 'over-long'. */
  readonly longestLine: number;
  /** False where bytes may begin in the middle of a line (a port just opened), true for a file. */
  readonly startKnown: boolean;
}

export interface LineSplitter {
  /** Takes the next bytes; returns the lines that ended in them, stamped with these bytes' arrival. */
  push(bytes: Uint8Array, arrivedUs: number): ReceivedLine[];
  /** No more bytes: returns the rest as a cut-off line and begins anew, as for a new connection. */
  end(arrivedUs: number): ReceivedLine[];
}

const LF = 10;
const CR = 13;

const ascii = new TextDecoder();
const utf16 = new TextDecoder('utf-16le');

/**
 * Cuts a reader's bytes into lines. LF, CR LF and a lone CR end a line; a blank line is a line. One character
 * per byte (latin1). Holds at most `longestLine` characters: of a longer line the head is reported as
 * 'over-long' the moment it grows too long, and the rest is skipped up to the next line end.
 * The result does not depend on how the bytes were cut into chunks.
 */
export function createLineSplitter({ longestLine, startKnown }: LineSplitterOptions): LineSplitter {
  let held = '';
  let skipping = false;
  let afterCr = false;
  let wholenessOfNext: LineWholeness = startKnown ? 'whole' : 'start-unknown';

  function push(bytes: Uint8Array, arrivedUs: number): ReceivedLine[] {
    const lines: ReceivedLine[] = [];
    const text = textOf(bytes);
    let from = 0;
    const keep = (to: number): void => {
      if (skipping) return;
      if (held.length + to - from > longestLine) {
        const head = held + text.slice(from, from + longestLine - held.length);
        lines.push({ arrivedUs, text: head, wholeness: 'over-long' });
        held = '';
        skipping = true;
      } else {
        const piece = text.slice(from, to);
        held = held === '' ? piece : held + piece;
      }
    };
    for (let at = 0; at < bytes.length; at++) {
      const byte = bytes[at];
      if (byte !== LF && byte !== CR) continue;
      if (byte === LF && afterCr && at === from) {
        // The LF of a CR LF: its line was reported at the CR, which may have come a chunk earlier.
        afterCr = false;
        from = at + 1;
        continue;
      }
      keep(at);
      if (!skipping) lines.push({ arrivedUs, text: held, wholeness: wholenessOfNext });
      held = '';
      skipping = false;
      wholenessOfNext = 'whole';
      afterCr = byte === CR;
      from = at + 1;
    }
    if (from < bytes.length) {
      keep(bytes.length);
      afterCr = false;
    }
    return lines;
  }

  function end(arrivedUs: number): ReceivedLine[] {
    const lines: ReceivedLine[] = held === '' ? [] : [{ arrivedUs, text: held, wholeness: 'cut-off' }];
    held = '';
    skipping = false;
    afterCr = false;
    wholenessOfNext = startKnown ? 'whole' : 'start-unknown';
    return lines;
  }

  return { push, end };
}

/**
 * One character per byte. The platform's decoders are by far the fastest, but what they call "latin1" is
 * windows-1252: so ASCII is decoded as it is, and bytes above it are first widened to UTF-16.
 */
function textOf(bytes: Uint8Array): string {
  let seen = 0;
  for (let at = 0; at < bytes.length; at++) seen |= bytes[at] as number;
  if (seen < 0x80) return ascii.decode(bytes);
  const wide = new Uint8Array(2 * bytes.length);
  for (let at = 0; at < bytes.length; at++) wide[2 * at] = bytes[at] as number;
  return utf16.decode(wide);
}
