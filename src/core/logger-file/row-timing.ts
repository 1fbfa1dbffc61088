import { decimalsOf } from '../wire/plain/read-number.ts';
import { createRowClock } from './create-row-clock.ts';
import type { LoggerTable } from './find-table.ts';
import type { LoggerLayout, LoggerTime } from './LoggerLayout.ts';
import { readStamp } from './read-stamp.ts';

/** Whether rows share times, and how finely times are written. Undefined where they stand still or mostly run back; `backwards` where all do. */
export function rowTiming(
  table: LoggerTable,
  time: LoggerTime,
): Pick<LoggerLayout, 'sharedTimes' | 'timeResolutionS'> | 'backwards' | undefined {
  if (time.kind === 'interval') return { sharedTimes: null, timeResolutionS: 0 };
  const clock = createRowClock(time, table.decimal);
  const timesUs = table.rows.flatMap((at) => clock(table.lines[at] ?? []) ?? []);
  if (timesUs.length === 0) return undefined;
  const groups: number[] = [];
  let smallest = Number.POSITIVE_INFINITY;
  timesUs.forEach((timeUs, at) => {
    const step = timeUs - (timesUs[at - 1] ?? Number.NEGATIVE_INFINITY);
    if (step === 0) groups[groups.length - 1] = (groups.at(-1) ?? 0) + 1;
    else groups.push(1);
    if (step > 0 && step < smallest) smallest = step;
  });
  const forward = timesUs.filter(
    (timeUs, at) => timeUs > (timesUs[at - 1] ?? Number.POSITIVE_INFINITY),
  ).length;
  const [earliest = 0] = timesUs;
  if (timesUs.length > 2 && forward === 0 && (timesUs.at(-1) ?? 0) < earliest) return 'backwards';
  if (timesUs.length > 1 && forward * 2 < groups.length - 1 + (groups.length === 1 ? 1 : 0)) return undefined;
  const inner = groups.slice(1, -1).toSorted((a, b) => a - b);
  const rowsPerStep = inner[inner.length >> 1] ?? Math.max(...groups);
  const writtenUs = writtenStepUs(table, time);
  const several = groups.filter((rows) => rows > 1).length;
  // A row or two written twice are no habit.
  const shares = several >= 0.5 * groups.length || (several >= 3 && several >= 0.2 * groups.length);
  return shares
    ? {
        sharedTimes: { stepUs: smallest, rowsPerStep: Math.max(2, rowsPerStep) },
        timeResolutionS: smallest / 1e6,
      }
    : { sharedTimes: null, timeResolutionS: writtenUs / 1e6 };
}

function writtenStepUs(table: LoggerTable, time: Exclude<LoggerTime, { kind: 'interval' }>): number {
  let stepUs = Number.POSITIVE_INFINITY;
  for (const at of table.rows) {
    const cells = table.lines[at] ?? [];
    const step =
      time.kind === 'number'
        ? time.tickUs / 10 ** Math.max(0, decimalsOf(cells[time.column] ?? '', table.decimal))
        : readStamp(time.columns.map((column) => cells[column] ?? '').join(' '), time.order, time.short)
            ?.stepUs;
    if (step !== undefined && step < stepUs) stepUs = step;
  }
  return Number.isFinite(stepUs) ? stepUs : 0;
}
