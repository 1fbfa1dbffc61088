import { UnitError } from './UnitError.ts';

const PLAIN = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)$/;
const WITH_COMMA = /^[+-]?\d+,\d+$/;
/** Exactly three digits after the comma may be thousands, unless the whole part is a bare zero. */
const THOUSANDS_OR_DECIMAL = /^[+-]?[1-9]\d{0,2},\d{3}$/;

/**
 * Reads a number as a person writes it: decimal point or decimal comma.
 * Refuses what may mean two things (`1,250` is 1.25 or 1250) and anything else that is no plain number.
 */
export function readNumber(text: string, asked: { readonly option: string; readonly given: string }): number {
  const compact = text.trim().replace('−', '-');
  if (THOUSANDS_OR_DECIMAL.test(compact)) {
    throw new UnitError(
      'number-unreadable',
      `${asked.option}: "${compact}" may be a thousand or a fraction`,
      {
        ...asked,
        remedy: `Write ${compact.replace(',', '')} or ${compact.replace(',', '.')}`,
      },
    );
  }
  const pointed = WITH_COMMA.test(compact) ? compact.replace(',', '.') : compact;
  const value = PLAIN.test(pointed) ? Number(pointed) : Number.NaN;
  if (!Number.isFinite(value)) {
    throw new UnitError(
      'number-unreadable',
      `${asked.option}: expected a number with its unit, came "${asked.given}"`,
      {
        ...asked,
        remedy: 'Write digits with at most one decimal point, then the unit, for example 350F or 12.5s',
      },
    );
  }
  return value;
}
