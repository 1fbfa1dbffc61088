import type { RecordingEntry } from '../recording/RecordingEntry.ts';
import { createLineSplitter } from '../wire/line-splitter.ts';
import { PROTOCOL_LONGEST_LINE } from '../wire/protocol/protocol-limits.ts';
import type { ReceivedLine } from '../wire/WireEvent.ts';
import type { ReaderLinkListener } from './ReaderLink.ts';

export interface LineSource extends ReaderLinkListener {
  /** The recording ends at `arrivedUs` of the link's clock: the rest of an unfinished line is cut off. */
  finish(arrivedUs: number): void;
}

/**
 * Turns what a reader link delivers into entries of a recording: lines as received, with their arrival from the
 * start of the recording. Each connection gets a splitter of its own, so that half a line from before an unplug is
 * a cut-off line and never joins the first one after it, whose own start is unknown.
 */
export function createLineSource(options: {
  /** Start of the recording on the link's clock, µs. */
  readonly startUs: number;
  readonly onEntry: (entry: RecordingEntry) => void;
  /** Most characters of a line, line end not counted. */
  readonly longestLine?: number;
}): LineSource {
  const { startUs, onEntry, longestLine = PROTOCOL_LONGEST_LINE } = options;
  let splitter = createLineSplitter({ longestLine, startKnown: false });
  const tell = (lines: readonly ReceivedLine[]): void => {
    for (const { arrivedUs, text, wholeness } of lines) onEntry({ kind: 'line', arrivedUs, text, wholeness });
  };
  return {
    bytes(chunk, arrivedUs) {
      tell(splitter.push(chunk, arrivedUs - startUs));
    },
    lost(arrivedUs, cause) {
      tell(splitter.end(arrivedUs - startUs));
      onEntry({ kind: 'host', arrivedUs: arrivedUs - startUs, event: 'port-lost', detail: cause });
    },
    back(arrivedUs) {
      splitter = createLineSplitter({ longestLine, startKnown: false });
      onEntry({ kind: 'host', arrivedUs: arrivedUs - startUs, event: 'port-back', detail: '' });
    },
    finish(arrivedUs) {
      tell(splitter.end(arrivedUs - startUs));
    },
  };
}
