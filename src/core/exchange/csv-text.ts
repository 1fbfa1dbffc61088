import { stringify } from 'csv-stringify/sync';
import { csvCellText } from './csv-cell-text.ts';
import type { ExportField, ExportValue } from './ExportField.ts';

/** Parts of a list in one cell. */
const BETWEEN = ' | ';

/**
 * Rows as CSV after RFC 4180, in pieces: comma, CR LF, one heading line, text always in quotes, numbers with a decimal
 * point and every digit they have, true and false, nothing where there is no value.
 */
export function* csvText<Row>(fields: readonly ExportField<Row>[], rows: Iterable<Row>): Generator<string> {
  yield line(fields.map(({ name }) => name));
  for (const row of rows) yield line(fields.map(({ value }) => cell(value(row))));
}

function line(cells: readonly (string | number | boolean | null)[]): string {
  return stringify([cells as (string | number | boolean | null)[]], {
    record_delimiter: 'windows',
    quoted_string: true,
    cast: { boolean: String, number: (value) => number(value) },
  });
}

function cell(value: ExportValue): string | number | boolean | null {
  if (typeof value === 'string') return csvCellText(value);
  return isList(value) ? csvCellText(value.join(BETWEEN)) : value;
}

const isList = (value: ExportValue): value is readonly string[] => Array.isArray(value);

function number(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`an exported number must be finite, came ${value}`);
  return String(value);
}
