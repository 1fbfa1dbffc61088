import { faultWord } from './fault-value.ts';
import type { PlainContent, PlainField } from './PlainField.ts';
import { type DecimalSign, decimalsOf, readNumber } from './read-number.ts';
import { wholeTemperatureUnit } from './temperature-unit.ts';

const NUMBER_THEN_UNIT = /^([+\-\u2212]?(?:\d[\d.,]*|[.,]\d+)(?:e[+-]?\d+)?)([^\d.,\s].*)?$/i;
const STAMP =
  /^(?:\d{1,2}:\d{2}(?::\d{2})?(?:[.,:]\d+)?(?:am|pm)?|\d{4}[-/.]\d{1,2}[-/.]\d{1,2}(?:t\d{2}:\d{2}.*)?|\d{1,2}[-/.]\d{1,2}[-/.]\d{2,4})z?$/i;
const OTHER_UNIT =
  /^(?:%|%?rh|s|sec|secs|seconds?|ms|msec|millis|us|µs|μs|min|mins|h|hz|m?v|volts?|m?a|w|kw|kohm|k?ω|ohms?|psi|bar|h?pa|kpa|lx|rpm|counts?|adc)$/i;

export function numberContent(text: string, decimal: DecimalSign): PlainContent | undefined {
  const value = readNumber(text, decimal);
  if (value === undefined) return undefined;
  const decimals = decimalsOf(text, decimal);
  const whole = text.replace(/^[+\-\u2212]/, '');
  const end = whole.search(/[.,eE]/);
  return { kind: 'number', value, decimals, integerDigits: end < 0 ? whole.length : end };
}

/** `deg C` and `° C` in two words are one unit. */
function unitAt(
  words: readonly string[],
  at: number,
): { readonly words: number; readonly field: Partial<PlainField> } {
  const first = words[at];
  if (first === undefined) return { words: 0, field: {} };
  const second = words[at + 1];
  if (second !== undefined && /^(?:°|º|deg(?:rees?)?\.?)$/i.test(first)) {
    const unit = wholeTemperatureUnit(`${first} ${second}`);
    if (unit) return { words: 2, field: { unit } };
  }
  const unit = wholeTemperatureUnit(first);
  if (unit) return { words: 1, field: { unit } };
  return OTHER_UNIT.test(first)
    ? { words: 1, field: { otherUnit: first.toLowerCase() } }
    : { words: 0, field: {} };
}

/**
 * Reads the values of one piece of a plain line, each with the label before it and the unit after it:
 * `T1: 231.2 C  T2: 75.1 C`, `Temp = 448.2 °F`, `OPEN`, `231.2C`. Undefined if something is left over
 * that belongs to no value: then the piece is text.
 */
export function plainCell(text: string, decimal: DecimalSign): readonly PlainField[] | undefined {
  const spaced = text
    .replace(/[{}"]/g, ' ')
    .replace(/=/g, ' = ')
    .replace(/[^\s]*:[^\s]*/g, (word) => (STAMP.test(word) ? word : word.replace(/:/g, ' : ')))
    .trim();
  if (spaced === '') return [{ label: null, content: { kind: 'empty' }, unit: null, otherUnit: null }];
  const whole = faultWord(spaced);
  if (whole) return [{ label: null, content: { kind: 'fault', fault: whole }, unit: null, otherUnit: null }];
  const words = spaced.split(/\s+/);
  const fields: PlainField[] = [];
  let label: string[] = [];
  let assigned = false;
  for (let at = 0; at < words.length; at += 1) {
    const word = words[at] ?? '';
    if (word === ':' || word === '=') {
      if (label.length === 0 || assigned) return undefined;
      assigned = true;
      continue;
    }
    const next = words[at + 1];
    const belongsToLabel = !assigned && (next === ':' || next === '=');
    const content = belongsToLabel ? undefined : contentOf(word, decimal, assigned || label.length === 0);
    if (!content) {
      if (assigned || !/^[\p{L}\p{N}_#°().[\]/%*+-]+$/u.test(word)) return undefined;
      label.push(word);
      if (label.length > 5) return undefined;
      continue;
    }
    const attached = content.unitText === '' ? undefined : unitAt([content.unitText], 0);
    if (attached?.words === 0) return undefined;
    const unit = attached ?? unitAt(words, at + 1);
    if (!attached) at += unit.words;
    fields.push({
      label: label.length > 0 ? label.join(' ') : null,
      content: content.content,
      unit: unit.field.unit ?? null,
      otherUnit: unit.field.otherUnit ?? null,
    });
    label = [];
    assigned = false;
  }
  return label.length > 0 || assigned || fields.length === 0 ? undefined : fields;
}

function contentOf(
  word: string,
  decimal: DecimalSign,
  faultAllowed: boolean,
): { readonly content: PlainContent; readonly unitText: string } | undefined {
  if (STAMP.test(word)) return { content: { kind: 'stamp' }, unitText: '' };
  const fault = faultAllowed ? faultWord(word) : undefined;
  if (fault) return { content: { kind: 'fault', fault }, unitText: '' };
  const found = NUMBER_THEN_UNIT.exec(word);
  if (!found) return undefined;
  const content = numberContent(found[1] ?? '', decimal);
  return content && { content, unitText: found[2] ?? '' };
}
