/** A quoted field may hold line breaks; one that stays open longer than this is a stray quote. */
const MOST_JOINED_LINES = 20;
const MOST_JOINED_LENGTH = 10_000;

export interface LoggerLine {
  /** Without line end; line breaks inside a quoted field are spaces. */
  readonly text: string;
  /** False for the last line if the file stops without a line end. */
  readonly ended: boolean;
}

function quotes(text: string): number {
  let count = 0;
  for (let at = text.indexOf('"'); at >= 0; at = text.indexOf('"', at + 1)) count += 1;
  return count;
}

function* physicalLines(text: string): Generator<LoggerLine> {
  // Found once each and moved on only when passed, so that a file without one of them is not searched again and again.
  let from = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  let feed = text.indexOf('\n', from);
  let back = text.indexOf('\r', from);
  while (from < text.length) {
    if (feed >= 0 && feed < from) feed = text.indexOf('\n', from);
    if (back >= 0 && back < from) back = text.indexOf('\r', from);
    const end = feed < 0 ? back : back < 0 ? feed : Math.min(feed, back);
    if (end < 0) {
      yield { text: text.slice(from), ended: false };
      return;
    }
    yield { text: text.slice(from, end), ended: true };
    from = end + (end === back && text.charCodeAt(end + 1) === 10 ? 2 : 1);
  }
}

/**
 * The lines of a logger's file, ended by LF, CR LF or CR, one at a time. A line break inside a quoted
 * field (RFC 4180, section 2, rule 6) does not end the line; it becomes a space. A quote that is never
 * closed within 20 lines is taken for a plain character.
 */
export function* loggerLines(text: string): Generator<LoggerLine> {
  let open: LoggerLine[] = [];
  let length = 0;
  for (const line of physicalLines(text)) {
    const odd = quotes(line.text) % 2 === 1;
    if (open.length === 0) {
      if (odd && line.ended) {
        open = [line];
        length = line.text.length;
      } else yield line;
      continue;
    }
    open.push(line);
    length += line.text.length;
    if (odd) {
      yield { text: open.map((part) => part.text).join(' '), ended: line.ended };
      open = [];
    } else if (open.length >= MOST_JOINED_LINES || length > MOST_JOINED_LENGTH) {
      yield* open;
      open = [];
    }
  }
  yield* open;
}
