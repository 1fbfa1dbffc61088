import { MM_PER_INCH } from './exact-factors.ts';
import { requireNotNegative } from './require-not-negative.ts';
import { splitQuantity } from './split-quantity.ts';
import { UnitError } from './UnitError.ts';

const KIND = {
  what: 'length',
  spellings: {
    in: 'in',
    inch: 'in',
    inches: 'in',
    '"': 'in',
    '″': 'in',
    '”': 'in',
    mm: 'mm',
    cm: 'cm',
    m: 'm',
  },
  examples: '9.875in, 9 7/8 in or 250.8mm',
} as const;

const MILLIMETRES = { in: MM_PER_INCH, mm: 1, cm: 10, m: 1000 } as const;
const FRACTION = /^(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)(.*)$/su;

/**
 * Reads a length with its unit, fractions of an inch included (`9 7/8 in`, `9-7/8"`, `9.875in`, `250,8 mm`),
 * and returns mm. Refuses a missing or unknown unit, a length below 0 and a zero under the stroke. Example: '1in' → 25.4.
 */
export function parseLength(text: string, option: string): number {
  return requireNotNegative(lengthMm(text, option), 'length', { option, given: text });
}

function lengthMm(text: string, option: string): number {
  const [, whole = '0', above, below, unitText = ''] = FRACTION.exec(text.trim()) ?? [];
  if (above === undefined || below === undefined) {
    const { value, unit } = splitQuantity<keyof typeof MILLIMETRES>(text, option, KIND);
    return value * MILLIMETRES[unit];
  }
  if (Number(below) === 0) {
    throw new UnitError('number-unreadable', `${option}: "${text}" divides by zero`, {
      option,
      given: text,
      remedy: `Give the length with its unit, for example ${KIND.examples}`,
    });
  }
  const { unit } = splitQuantity<keyof typeof MILLIMETRES>(`1${unitText}`, option, KIND);
  return (Number(whole) + Number(above) / Number(below)) * MILLIMETRES[unit];
}
