import { headingMeaning, tickUsInHeading } from '../wire/plain/heading-words.ts';
import {
  type TemperatureUnit,
  temperatureUnitInHeading,
  wholeTemperatureUnit,
} from '../wire/plain/temperature-unit.ts';
import type { LoggerTable } from './find-table.ts';
import { foreignUnit } from './foreign-unit.ts';

const MOST_HEADING_ROWS = 4;

export interface LoggerHeadings {
  /** One per column; null where the column has none. */
  readonly names: readonly (string | null)[];
  readonly units: readonly (TemperatureUnit | null)[];
  /** Microseconds per unit of a time, where a heading says it. */
  readonly ticksUs: readonly (number | null)[];
  /** A unit of something else (mV, %, psi); null where there is none. */
  readonly foreignUnits: readonly (string | null)[];
  /** How many lines they take. */
  readonly lines: number;
}

const UNIT_CELL =
  /^[[({<]?\s*(?:[°º˚]\s?[CFK]|[CFK]|deg\.? ?[CFK]|celsius|fahrenheit|kelvin|m?s|sec|seconds?|[uµ]s|min|h|hh:mm:ss|yyyy.*|dd.*|%|-|n\/?a|m?V|m?A|W|kW|psi|k?Pa|bar|units?|℃|℉)?\s*[\])}>]?$/i;

function isHeadingRow(cells: readonly string[], table: LoggerTable): boolean {
  const named = cells.filter((cell) => /\p{L}|[°#%]/u.test(cell)).length;
  const fits =
    cells.length >= Math.min(2, table.columnCount) && Math.abs(cells.length - table.columnCount) <= 1;
  return fits && named >= 1 && named * 2 >= cells.filter((cell) => cell !== '').length;
}

/** A unit row holds nothing but units; at least one of them is told by its brackets or degree sign or stands under names. */
function isUnitRow(cells: readonly string[]): boolean {
  return cells.some((cell) => cell !== '') && cells.every((cell) => UNIT_CELL.test(cell));
}

function tellsAnything(cells: readonly string[]): boolean {
  return (
    isUnitRow(cells) ||
    cells.some((cell) => headingMeaning(cell) !== 'unknown' || temperatureUnitInHeading(cell))
  );
}

/** Joins the heading lines above the first row of values, read upwards: units under names, names over several lines. */
export function findHeadings(table: LoggerTable): LoggerHeadings {
  const rows: (readonly string[])[] = [];
  for (let at = table.firstRow - 1; at >= 0 && rows.length < MOST_HEADING_ROWS; at -= 1) {
    const cells = table.lines[at] ?? [];
    if (cells.length === 0 && rows.length === 0) continue;
    if (!isHeadingRow(cells, table)) break;
    // A garbled row between heading and values: only the row above tells anything.
    if (rows.length === 0 && !tellsAnything(cells) && tellsAnything(table.lines[at - 1] ?? [])) continue;
    // Above a row of names only a row that is no preamble belongs: it must fill most columns.
    const onlyUnitsSoFar = rows.every(isUnitRow);
    if (!onlyUnitsSoFar && cells.filter((cell) => cell !== '').length < table.columnCount - 1) break;
    if (
      !onlyUnitsSoFar &&
      rows.some((row) => !isUnitRow(row) && row.filter((cell) => cell !== '').length >= table.columnCount)
    )
      break;
    rows.unshift(cells);
  }
  const units = rows.filter(isUnitRow);
  const names = rows.filter((row) => !isUnitRow(row));
  const columns = Array.from({ length: table.columnCount }, (_, column) => column);
  const under = (column: number) => units.map((row) => row[column] ?? '').find((cell) => cell !== '');
  const nameOf = (column: number) => {
    const source = names.length > 0 ? names : units;
    const words = source.map((row) => row[column] ?? '').filter((cell) => cell !== '');
    return words.length > 0 ? words.join(' ') : null;
  };
  return {
    names: columns.map(nameOf),
    units: columns.map((column) => {
      const unit = under(column);
      const name = nameOf(column);
      if (foreignUnit(name ?? '') !== undefined) return null;
      return (
        (unit ? wholeTemperatureUnit(unit) : undefined) ??
        (name ? temperatureUnitInHeading(name) : undefined) ??
        null
      );
    }),
    ticksUs: columns.map(
      (column) => tickUsInHeading(under(column) ?? '') ?? tickUsInHeading(nameOf(column) ?? '') ?? null,
    ),
    foreignUnits: columns.map((column) => {
      const unit = under(column);
      return (unit ? foreignUnit(unit) : undefined) ?? foreignUnit(nameOf(column) ?? '') ?? null;
    }),
    lines: rows.length,
  };
}
