import { jsonValues } from './json-values.ts';
import type { PlainField, PlainSeparator, PlainValues } from './PlainField.ts';
import { plainCell } from './plain-cell.ts';
import type { DecimalSign } from './read-number.ts';

/** A lone `231,25` is one value with a decimal comma; `231,250` could be two columns and is taken as two. */
const LONE_DECIMAL_COMMA = /^\s*(?:[^,]*[:=]\s*)?[+-]?\d+,\d{1,2}(?:\s*[°ºCFK][^,]*)?\s*$/i;
const DECIMAL_COMMA = /\d,\d/;
const SPLIT: Readonly<Record<string, PlainSeparator>> = {
  '\t': 'tab',
  ';': 'semicolon',
  '|': 'bar',
  ',': 'comma',
};

function columns(text: string, sign: string, decimal: DecimalSign): PlainValues | undefined {
  const fields: PlainField[] = [];
  const cells = text.split(sign);
  // A separator at the line's end adds no column.
  if (cells.length > 1 && cells.at(-1)?.trim() === '') cells.pop();
  for (const cell of cells) {
    const found = plainCell(cell, decimal);
    const [field] = found ?? [];
    if (!field) return undefined;
    // `Thermocouple 24.5 C internal 23.1 C, ok` is no column line; a stamp `2024-05-01 10:00:00` is two pieces of one.
    if ((found ?? []).length > 1 && !found?.every((piece) => piece.content.kind === 'stamp'))
      return undefined;
    fields.push(field);
  }
  return { separator: SPLIT[sign] ?? 'comma', decimal, fields };
}

/**
 * Takes a plain line apart into its values, by the separator that stands in it: tab, semicolon, bar, comma,
 * else spaces; one JSON object by its keys. Undefined if the line holds anything but values with labels and units (a heading, a banner,
 * a garbled line). Looks at this line alone; what columns mean is decided over several lines.
 */
export function plainValues(line: string): PlainValues | undefined {
  const text = line.trim();
  const json = jsonValues(text);
  if (json) return json;
  for (const sign of ['\t', ';', '|']) {
    if (text.includes(sign))
      return columns(text, sign, DECIMAL_COMMA.test(text) && !/\d\.\d/.test(text) ? ',' : '.');
  }
  if (LONE_DECIMAL_COMMA.test(text)) return spaced(text, ',');
  if (/,\s/.test(text) || !/\s/.test(text)) {
    return text.includes(',') ? columns(text, ',', '.') : spaced(text, '.');
  }
  if (!text.includes(',')) return spaced(text, '.');
  // Commas inside words separated by spaces: decimal commas if every one stands between digits.
  return columns(text, ',', '.') ?? (/\d\.\d/.test(text) ? undefined : spaced(text, ','));
}

function spaced(text: string, decimal: DecimalSign): PlainValues | undefined {
  const fields = plainCell(text, decimal);
  return fields && { separator: fields.length > 1 ? 'space' : 'single', decimal, fields };
}
