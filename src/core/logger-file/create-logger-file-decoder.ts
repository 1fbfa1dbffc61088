import { textFromBytes } from '../wire/plain/text-from-bytes.ts';
import type { ChannelValue, LineDecoder, ReceivedLine, WireEvent } from '../wire/WireEvent.ts';
import { createRowClock } from './create-row-clock.ts';
import type { LoggerLayout } from './LoggerLayout.ts';
import { loggerValue } from './logger-cell.ts';
import { loggerRow } from './logger-row.ts';

/**
 * Decoder for the rows of a recognised logger's file, so that they go through the same pipeline as a
 * reader's lines. A row's time is its device time (absolute, it does not wrap); where rows share a time or
 * have none, it is the arrival that `loggerFileEntries` gave the row. Lines that do not fit, garbled
 * numbers and a cut last line are trouble, never readings. A heading that comes again before times begin
 * anew means that the logger restarted.
 */
export function createLoggerFileDecoder(layout: LoggerLayout): LineDecoder {
  const clock = createRowClock(layout.time, layout.decimal);
  const byArrival = layout.time.kind === 'interval' || layout.sharedTimes !== null;
  let lines = 0;
  let lastUs: number | null = null;
  let headingAgain = false;

  function rowEvents(line: ReceivedLine, cells: readonly string[]): readonly WireEvent[] {
    const rowUs = clock(cells);
    if (rowUs === undefined) return garbage(line);
    const channels: ChannelValue[] = [];
    for (const { column, unit } of layout.temperatures) {
      const value = loggerValue(cells[column] ?? '', layout.decimal, unit);
      if (!value) return garbage(line);
      channels.push(value);
    }
    const ranBack = lastUs !== null && rowUs < lastUs;
    const restarted = ranBack && (headingAgain || byArrival);
    lastUs = rowUs;
    headingAgain = false;
    const sample: WireEvent = Object.freeze({
      kind: 'sample',
      sequence: null,
      deviceTimeUs: byArrival ? line.arrivedUs : rowUs,
      channels: Object.freeze(channels),
    });
    return restarted ? [{ kind: 'started' }, sample] : [sample];
  }

  return {
    decode(line) {
      lines += 1;
      if (line.wholeness !== 'whole') return [{ kind: 'trouble', trouble: line.wholeness, text: line.text }];
      if (lines <= layout.leadingLines) return [{ kind: 'remark', text: line.text }];
      const row = loggerRow(textFromBytes(line.text), layout);
      if (row.kind === 'row') return rowEvents(line, row.cells);
      if (row.kind === 'misfit') return garbage(line);
      if (row.kind === 'heading') headingAgain = true;
      return [{ kind: 'remark', text: line.text }];
    },
    recognised: layout.recognised,
    clockWrapUs: null,
    sequenceWrap: null,
  };
}

function garbage(line: ReceivedLine): readonly WireEvent[] {
  return [{ kind: 'trouble', trouble: 'garbage', text: line.text }];
}
