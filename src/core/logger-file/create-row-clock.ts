import { type DecimalSign, readNumber } from '../wire/plain/read-number.ts';
import type { LoggerTime } from './LoggerLayout.ts';
import { readStamp } from './read-stamp.ts';

const DAY_US = 86_400e6;
const WRAP_US = 2 ** 32;

/**
 * Time of each row in absolute µs, row after row: undefined where the row's time cannot be read. A clock
 * without date that falls back by more than half a day has passed midnight; a microsecond count that falls
 * back from the end of 32 bits has wrapped. Any other step back is left as it is, for the caller to see.
 */
export function createRowClock(
  time: LoggerTime,
  decimal: DecimalSign,
): (cells: readonly string[]) => number | undefined {
  let last: number | null = null;
  let offset = 0;
  let row = -1;
  return (cells) => {
    row += 1;
    if (time.kind === 'interval') return row * time.intervalUs;
    const raw =
      time.kind === 'number' ? numberUs(cells[time.column], time.tickUs, decimal) : stampUs(cells, time);
    if (raw === undefined) return undefined;
    const dated = raw.dated;
    if (last !== null && !dated) {
      const fall = last - raw.us;
      if (time.kind === 'stamp' && fall > DAY_US / 2) offset += DAY_US;
      if (time.kind === 'number' && time.tickUs === 1 && fall > 0.9 * WRAP_US) offset += WRAP_US;
    }
    last = raw.us;
    return raw.us + (dated ? 0 : offset);
  };
}

function numberUs(
  cell: string | undefined,
  tickUs: number,
  decimal: DecimalSign,
): { us: number; dated: boolean } | undefined {
  const value = cell === undefined ? undefined : readNumber(cell, decimal);
  const us = value === undefined ? undefined : Math.round(value * tickUs);
  return us === undefined || Math.abs(us) > Number.MAX_SAFE_INTEGER ? undefined : { us, dated: false };
}

function stampUs(
  cells: readonly string[],
  time: Extract<LoggerTime, { kind: 'stamp' }>,
): { us: number; dated: boolean } | undefined {
  const text = time.columns.map((column) => cells[column] ?? '').join(' ');
  const stamp = readStamp(text.trim(), time.order, time.short);
  if (!stamp || stamp.timeUs === null) return undefined;
  return { us: Math.round((stamp.day ?? 0) * DAY_US + stamp.timeUs), dated: stamp.day !== null };
}
