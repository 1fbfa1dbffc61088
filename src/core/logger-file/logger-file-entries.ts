import type { RecordingEntry } from '../recording/RecordingEntry.ts';
import { decimalsOf } from '../wire/plain/read-number.ts';
import { bytesFromText } from '../wire/plain/text-from-bytes.ts';
import { createRowClock } from './create-row-clock.ts';
import { LoggerFileProblem } from './LoggerFileProblem.ts';
import type { LoggerLayout } from './LoggerLayout.ts';
import { loggerCellKind } from './logger-cell.ts';
import { type LoggerLine, loggerLines } from './logger-lines.ts';
import { loggerRow } from './logger-row.ts';
import { spreadSharedTimes } from './spread-shared-times.ts';

type LineEntry = Extract<RecordingEntry, { kind: 'line' }>;

/** Longer lines are kept only as far as this, and are no readings. */
const LONGEST_LINE = 100_000;

export interface TimedLine {
  readonly line: LoggerLine;
  /** Absolute time of the row, µs; undefined for lines that are no row or have no readable time. */
  readonly rowUs: number | undefined;
  readonly cells: readonly string[] | undefined;
}

function* timedLines(text: string, layout: LoggerLayout): Generator<TimedLine> {
  const clock = createRowClock(layout.time, layout.decimal);
  let count = 0;
  for (const line of loggerLines(text)) {
    count += 1;
    const row =
      count > layout.leadingLines && line.text.length <= LONGEST_LINE
        ? loggerRow(line.text, layout)
        : undefined;
    const cells = row?.kind === 'row' ? row.cells : undefined;
    yield { line, rowUs: cells && clock(cells), cells };
  }
}

/** A last line without a line end is a reading only if its last used number shows that it is whole. */
function isCut({ line, cells }: TimedLine, layout: LoggerLayout): boolean {
  if (line.ended || line.text.trim() === '') return false;
  if (!cells || cells.length < layout.columnCount) return true;
  const used = [...layout.temperatures.map((one) => one.column), ...timeColumns(layout.time)];
  if (!used.includes(layout.columnCount - 1) || cells.length > layout.columnCount) return false;
  const last = cells[layout.columnCount - 1] ?? '';
  if (last === '') return false;
  return (
    loggerCellKind(last, layout.decimal) === 'text' ||
    decimalsOf(last, layout.decimal) !== (layout.lastColumnDecimals ?? -1)
  );
}

/** The columns that a row's time stands in. */
export function timeColumns(time: LoggerLayout['time']): readonly number[] {
  return time.kind === 'number' ? [time.column] : time.kind === 'stamp' ? time.columns : [];
}

/**
 * The lines of a logger's file as a recording's entries, in order, with arrival times counted from the
 * first row's time. Arrival never runs backwards: where the file's own times do, it goes on by one usual
 * step (the decoder still reports the file's own time). Lines that are no rows arrive with the row before.
 * Throws a LoggerFileProblem where the times span more than whole microseconds can count.
 * Text beyond ASCII travels as UTF-8, one character per byte, as everywhere on the wire.
 */
export function* loggerFileEntries(text: string, layout: LoggerLayout): Generator<LineEntry> {
  const lines = layout.sharedTimes
    ? spreadSharedTimes(timedLines(text, layout), layout.sharedTimes)
    : timedLines(text, layout);
  let shiftUs: number | null = null;
  let lastUs = 0;
  let stepUs = 0;
  for (const timed of lines) {
    if (timed.rowUs !== undefined) {
      shiftUs ??= -timed.rowUs;
      if (timed.rowUs + shiftUs < lastUs) shiftUs = lastUs + stepUs - timed.rowUs;
      const nowUs = Math.round(timed.rowUs + shiftUs);
      if (!Number.isSafeInteger(nowUs)) {
        throw new LoggerFileProblem(
          'logger-file-time-range',
          'the times of its rows span more than 285 years',
          'name the right time column and unit: --time-column NAME --time-unit s',
        );
      }
      if (nowUs > lastUs) stepUs = nowUs - lastUs;
      lastUs = nowUs;
    }
    const long = timed.line.text.length > LONGEST_LINE;
    yield {
      kind: 'line',
      arrivedUs: lastUs,
      text: bytesFromText(long ? timed.line.text.slice(0, LONGEST_LINE) : timed.line.text),
      wholeness: long ? 'over-long' : isCut(timed, layout) ? 'cut-off' : 'whole',
    };
  }
}
