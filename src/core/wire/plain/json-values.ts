import { faultWord } from './fault-value.ts';
import { headingMeaning } from './heading-words.ts';
import type { PlainField, PlainValues } from './PlainField.ts';
import { numberContent, plainCell } from './plain-cell.ts';
import { type TemperatureUnit, temperatureUnitInHeading, wholeTemperatureUnit } from './temperature-unit.ts';

const DEEPEST = 4;
const MOST_FIELDS = 64;
const UNIT_KEY = /^(?:temp(?:erature)?[ _]?)?units?$/i;

/**
 * The values of a line that is one JSON object (RFC 8259): `{"t_ms":1000,"bond_C":231.2,"platens_C":[231,230]}`. A field is
 * named by its key, inside objects and lists by the keys and places on the way. A unit stands in a key, behind a value, or in
 * a field `unit` beside it; none is guessed. Numbers and fault words are values, null is a fault; other texts and truth
 * values are no temperatures. Undefined where the line is no whole JSON object.
 */
export function jsonValues(text: string): PlainValues | undefined {
  if (!text.startsWith('{') || !text.endsWith('}')) return undefined;
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    // Cut, garbled, or not JSON at all: the caller sees whether it is another kind of line.
    return undefined;
  }
  const fields: PlainField[] = [];
  collect(value, '', null, 0, fields);
  return fields.length === 0 || fields.length > MOST_FIELDS
    ? undefined
    : { separator: 'json', decimal: '.', fields };
}

function collect(
  value: unknown,
  label: string,
  unit: TemperatureUnit | null,
  depth: number,
  into: PlainField[],
): void {
  if (into.length > MOST_FIELDS) return;
  if (typeof value !== 'object' || value === null) {
    into.push(fieldOf(value, label, unit));
    return;
  }
  if (depth >= DEEPEST) {
    into.push({ label, content: { kind: 'stamp' }, unit: null, otherUnit: null });
    return;
  }
  const list = Array.isArray(value);
  const beside = list ? unit : (unitBeside(value as Record<string, unknown>) ?? unit);
  for (const [key, part] of Object.entries(value)) {
    // The key last, since a unit stands at its end: `1 platens_C`.
    const place = list ? `${Number(key) + 1} ${label}`.trim() : `${label} ${key}`.trim();
    collect(part, place, beside, depth + 1, into);
  }
}

function unitBeside(object: Readonly<Record<string, unknown>>): TemperatureUnit | undefined {
  const said = Object.entries(object).find(([key, part]) => UNIT_KEY.test(key) && typeof part === 'string');
  return said === undefined ? undefined : wholeTemperatureUnit(said[1] as string);
}

function fieldOf(value: unknown, label: string, unit: TemperatureUnit | null): PlainField {
  const plain = { label, unit: null, otherUnit: null };
  if (value === null) return { ...plain, content: { kind: 'fault', fault: 'unspecified' } };
  if (typeof value === 'number') {
    const content = numberContent(String(value), '.');
    const own = headingMeaning(label) === 'temperature' && temperatureUnitInHeading(label) === undefined;
    return content === undefined
      ? { ...plain, content: { kind: 'fault', fault: 'unspecified' } }
      : { ...plain, content, unit: own ? unit : null };
  }
  if (typeof value === 'string') {
    const fault = faultWord(value);
    if (fault) return { ...plain, content: { kind: 'fault', fault } };
    const [field, ...more] = plainCell(value, '.') ?? [];
    if (field !== undefined && more.length === 0 && field.label === null) return { ...field, label };
  }
  return { ...plain, content: { kind: 'stamp' } };
}
