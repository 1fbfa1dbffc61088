import { decimalsOf } from '../wire/plain/read-number.ts';
import type { TemperatureUnit } from '../wire/plain/temperature-unit.ts';
import type { LoggerTable } from './find-table.ts';
import { loggerCellKind, numberAndUnit } from './logger-cell.ts';
import { isShortClock, readStamp } from './read-stamp.ts';

/** What the cells of one column look like over the head of a file. */
export interface ColumnProfile {
  readonly kind: 'number' | 'date' | 'clock' | 'date-and-clock' | 'short-clock' | 'text' | 'empty';
  readonly values: readonly number[];
  readonly texts: readonly string[];
  /** Unit printed with the values; null where none or several. */
  readonly printedUnit: TemperatureUnit | null;
  /** Most decimals written. */
  readonly decimals: number;
  readonly rises: boolean;
  readonly countsUp: boolean;
}

export function columnProfile(table: LoggerTable, column: number): ColumnProfile {
  const texts = table.rows.map((at) => table.lines[at]?.[column] ?? '').filter((cell) => cell !== '');
  const kinds = texts.map((cell) => loggerCellKind(cell, table.decimal));
  const share = (kind: string) => kinds.filter((one) => one === kind).length / Math.max(1, kinds.length);
  const numbers = texts.flatMap((cell) => numberAndUnit(cell, table.decimal) ?? []);
  const values = numbers.map((number) => number.value);
  const units = new Set(numbers.map((number) => number.unit));
  const [unit] = units;
  const steps = values.slice(1).map((value, at) => value - (values[at] ?? value));
  const forward = steps.filter((step) => step >= 0).length;
  return {
    kind:
      texts.length === 0
        ? 'empty'
        : share('stamp') > 0.5
          ? stampKind(texts)
          : share('number') > 0 && share('text') < 0.5
            ? 'number'
            : 'text',
    values,
    texts,
    printedUnit: units.size === 1 ? (unit ?? null) : null,
    decimals: Math.max(0, ...texts.map((text) => decimalsOf(text, table.decimal))),
    rises: steps.length > 0 && forward >= 0.9 * steps.length && steps.filter((step) => step > 0).length >= 1,
    countsUp: steps.length > 0 && steps.filter((step) => step === 1).length >= 0.9 * steps.length,
  };
}

function stampKind(texts: readonly string[]): 'date' | 'clock' | 'date-and-clock' | 'short-clock' {
  if (texts.filter((text) => isShortClock(text)).length * 2 > texts.length) return 'short-clock';
  const stamps = texts.flatMap(
    (text) => readStamp(text, 'day-first') ?? readStamp(text, 'month-first') ?? [],
  );
  const dated = stamps.filter((stamp) => stamp.day !== null).length * 2 > stamps.length;
  const timed = stamps.filter((stamp) => stamp.timeUs !== null).length * 2 > stamps.length;
  return dated ? (timed ? 'date-and-clock' : 'date') : 'clock';
}
