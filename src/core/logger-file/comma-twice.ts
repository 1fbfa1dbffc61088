import type { LoggerTable } from './find-table.ts';
import { LoggerFileProblem } from './LoggerFileProblem.ts';

const ROWS_LOOKED_AT = 200;

/**
 * A comma that both parts columns and stands in numbers (`0,24,00` under `time_s,temp_C`) would lose every fraction
 * without a word. Told by a last column that the heading does not name, holds bare digits, while no number
 * anywhere has a decimal point. Null where there is nothing to refuse.
 */
export function commaTwice(table: LoggerTable, names: readonly (string | null)[]): LoggerFileProblem | null {
  const above = table.lines.slice(0, table.firstRow).findLast((cells) => cells.length > 0) ?? [];
  const half = above.length * 2 === table.columnCount && above.every((cell) => /\p{L}/u.test(cell));
  const named = half ? above.length : names.filter((name) => name !== null).length;
  if (table.delimiter !== ',' || named === 0 || (!half && names.at(-1) !== null)) return null;
  const rows = table.rows.slice(0, ROWS_LOOKED_AT).map((at) => table.lines[at] ?? []);
  const full = rows.filter((cells) => cells.length === table.columnCount);
  const bare = full.every(
    (cells) => /^\s*\d+\s*$/.test(cells.at(-1) ?? '') && cells.every((cell) => !cell.includes('.')),
  );
  if (full.length === 0 || !bare) return null;
  return new LoggerFileProblem(
    'logger-file-no-rows',
    `the heading names ${named} ${named === 1 ? 'column' : 'columns'}, the rows hold ${table.columnCount}: the comma seems to part the columns and to stand in the numbers too`,
    'export the log with semicolons or tabs between the columns, or with decimal points',
  );
}
