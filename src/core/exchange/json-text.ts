import type { ExportField, ExportValue } from './ExportField.ts';

/** Raised when a field changes its meaning or goes; new fields do not raise it. */
export const EXPORT_FORMAT = 1;

/** Characters that steer a terminal or turn text about, which JSON would let through as they are. */
const STEERING = /[\x7f-\x9f\u2028\u2029\p{Cf}]/gu;

/**
 * Rows as one JSON document, in pieces: what was exported, what each field holds, then the rows with the same field
 * names as the CSV, lists as arrays, null where there is no value. Text is kept to the letter; steering characters are
 * written as escapes.
 */
export function* jsonText<Row>(
  what: string,
  fields: readonly ExportField<Row>[],
  rows: Iterable<Row>,
  made: { readonly madeAt: string; readonly program: string },
): Generator<string> {
  const about = Object.fromEntries(fields.map((field) => [field.name, field.about]));
  const head = plain({ export: what, format: EXPORT_FORMAT, ...made, fields: about }, 2);
  yield `${head.slice(0, -2)},\n  "rows": [`;
  let first = true;
  for (const row of rows) {
    const values = Object.fromEntries(fields.map(({ name, value }) => [name, value(row)]));
    yield `${first ? '' : ','}\n    ${plain(values)}`;
    first = false;
  }
  yield `${first ? '' : '\n  '}]\n}\n`;
}

function plain(value: Readonly<Record<string, unknown>>, indent = 0): string {
  const text = JSON.stringify(value, (key, part: ExportValue) => finite(key, part), indent);
  return text.replace(STEERING, (character) =>
    [...unitsOf(character)].map((unit) => `\\u${unit.toString(16).padStart(4, '0')}`).join(''),
  );
}

function finite(key: string, part: ExportValue): ExportValue {
  if (typeof part === 'number' && !Number.isFinite(part))
    throw new RangeError(`"${key}" must be finite, came ${part}`);
  return part;
}

function* unitsOf(character: string): Generator<number> {
  for (let at = 0; at < character.length; at += 1) yield character.charCodeAt(at);
}
