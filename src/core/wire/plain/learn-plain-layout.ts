import type { LearntLine, PlainColumn, PlainLayout } from './PlainLayout.ts';
import {
  countsUp,
  LEAST_ARRIVAL_SPAN_US,
  plainColumn,
  risesThroughout,
  tickFromArrivals,
} from './plain-column.ts';
import { plainHeading } from './plain-heading.ts';
import type { TemperatureUnit } from './temperature-unit.ts';

/** Lines of one shape before a layout is believed. */
const LEAST_LINES = 3;
/** With columns that no label or heading explains, a few more show which one counts. */
const LEAST_UNNAMED_LINES = 5;
/** Never waits longer than this for the arrivals to tell a clock's tick. */
export const MOST_LEARNT_LINES = 300;

/** An unnamed first column that rises at every line is watched this long: a count by ones, or anything else. */
const COUNT_LINES = 10;
const RISING_LINES = 20;

/** Whether a first column that no name explains must be watched longer before it is told from a temperature. */
function needsMore(lines: readonly LearntLine[], explained: boolean): boolean {
  if (explained || !risesThroughout(lines, 0)) return false;
  if (countsUp(lines, 0)) return lines.length < COUNT_LINES;
  if (tickFromArrivals(lines, 0) !== undefined && tickFromArrivals(lines, 0) !== 1e6) return false;
  const span = (lines.at(-1)?.arrivedUs ?? 0) - (lines[0]?.arrivedUs ?? 0);
  return lines.length < RISING_LINES || (span < LEAST_ARRIVAL_SPAN_US && lines.length < MOST_LEARNT_LINES);
}

/**
 * Learns the layout of a plain reader from lines of one shape and the text lines before them.
 * Undefined while more lines are needed, or while no column has shown a temperature yet.
 */
export function learnPlainLayout(
  lines: readonly LearntLine[],
  remarks: readonly string[],
  statedUnit: TemperatureUnit | null,
): PlainLayout | undefined {
  const first = lines[0]?.values;
  if (!first || lines.length < LEAST_LINES) return undefined;
  const count = first.fields.length;
  const heading = plainHeading(remarks, first.separator, count);
  const named = count === 1 || first.fields.every((field, at) => field.label ?? heading.names[at]);
  if (!named && lines.length < LEAST_UNNAMED_LINES) return undefined;
  const [leading] = first.fields;
  const explained = Boolean(leading?.label ?? heading.names[0] ?? leading?.unit);
  const timed = first.fields.findIndex((field, at) =>
    /time|^t$/i.test(field.label ?? heading.names[at] ?? ''),
  );
  if (count > 1 && (needsMore(lines, explained) || (timed >= 0 && lines.length < LEAST_UNNAMED_LINES))) {
    return undefined;
  }
  const raw = first.fields.map((_, at) =>
    plainColumn(lines, at, heading.names[at] ?? null, statedUnit, heading.unit),
  );
  const measured = raw.some(
    (column, at) =>
      column.kind === 'temperature' &&
      lines.filter((line) => line.values.fields[at]?.content.kind === 'number').length >= LEAST_LINES,
  );
  if (!measured && raw.some((column) => column.kind === 'temperature')) return undefined;
  return {
    separator: first.separator,
    decimal: lines.find((line) => line.values.decimal === ',') ? ',' : '.',
    labels: first.fields.map((field) => field.label),
    columns: onlyStated(statedUnit, shareUnit(onlyFirst(onlyFirst(raw, 'clock'), 'sequence'))),
  };
}

/** A second clock or sequence column adds nothing. */
function onlyFirst(columns: readonly PlainColumn[], kind: 'clock' | 'sequence'): readonly PlainColumn[] {
  const keep = columns.findIndex((column) => column.kind === kind);
  return columns.map((column, at) => (column.kind === kind && at !== keep ? { kind: 'other' } : column));
}

/** Where the reader prints each temperature in two units, the stated one is taken and the other left. */
function onlyStated(unit: TemperatureUnit | null, columns: readonly PlainColumn[]): readonly PlainColumn[] {
  const both = columns.some((column) => column.kind === 'temperature' && column.unit === unit);
  if (!unit || !both) return columns;
  return columns.map((column) =>
    column.kind === 'temperature' && column.unitFrom === 'line' && column.unit !== unit
      ? { kind: 'other' }
      : column,
  );
}

/** Where the line prints one and the same unit for some temperatures, it holds for those printed without. */
function shareUnit(columns: readonly PlainColumn[]): readonly PlainColumn[] {
  const printed = new Set(
    columns.flatMap((column) =>
      column.kind === 'temperature' && column.unitFrom === 'line' ? [column.unit] : [],
    ),
  );
  const [unit] = printed;
  if (printed.size !== 1 || !unit) return columns;
  return columns.map((column) =>
    column.kind === 'temperature' && column.unitFrom !== 'heading' && column.unitFrom !== 'line'
      ? { ...column, unit, unitFrom: 'line' }
      : column,
  );
}
