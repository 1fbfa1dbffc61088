import { columnsInWords } from './columns-in-words.ts';
import { findColumn } from './find-column.ts';
import type { LoggerTable } from './find-table.ts';
import { LoggerFileProblem } from './LoggerFileProblem.ts';
import type { LoggerLayout } from './LoggerLayout.ts';

/** The rows that `column=value` names: a table of these only, and how they are told. */
export function onlyRows(
  table: LoggerTable,
  names: readonly (string | null)[],
  wanted: string,
): { readonly table: LoggerTable; readonly only: NonNullable<LoggerLayout['only']> } | LoggerFileProblem {
  const sign = wanted.lastIndexOf('=');
  const column = sign < 1 ? undefined : findColumn(names, wanted.slice(0, sign));
  if (column === undefined)
    return new LoggerFileProblem(
      'logger-file-column-unknown',
      `the rows to read were expected as column=value, such as Sensor=1, "${wanted}" names no column; columns: ${columnsInWords(names)}`,
      'give --rows one of these headings or numbers, an equals sign, and what stands in that column',
    );
  const text = wanted.slice(sign + 1).trim();
  const held = table.rows.map((at) => table.lines[at]?.[column] ?? '');
  const found =
    held.find((one) => one === text) ?? held.find((one) => one.toLowerCase() === text.toLowerCase());
  if (found === undefined)
    return new LoggerFileProblem(
      'logger-file-option',
      `no row holds "${text}" in that column`,
      `give --rows one of: ${shown(held)}`,
    );
  const rows = table.rows.filter((at) => table.lines[at]?.[column] === found);
  return { table: { ...table, rows }, only: { column, text: found } };
}

export function shown(held: readonly string[]): string {
  const different = [...new Set(held)].map((text) =>
    text.replace(/[^\x20-\x7e\xa1-\u02ff]/g, '?').slice(0, 40),
  );
  return different.length > 12
    ? `${different.slice(0, 12).join(', ')} and ${different.length - 12} more`
    : different.join(', ');
}
