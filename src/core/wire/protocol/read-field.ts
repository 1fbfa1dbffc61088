import type { NumberRange } from './protocol-limits.ts';

const POINT = 0x2e;
const MINUS = 0x2d;
const POWERS_OF_TEN = [1, 10, 100, 1000, 10_000, 100_000, 1_000_000];

/** Whole number of at most `digits` digits in bytes `from` to `to`; -1 if it is none or above `most`. */
export function wholeNumber(
  bytes: Uint8Array,
  from: number,
  to: number,
  digits: number,
  most: number,
): number {
  if (to <= from || to - from > digits) return -1;
  let value = 0;
  for (let at = from; at < to; at++) {
    const digit = (bytes[at] as number) - 0x30;
    if (digit < 0 || digit > 9) return -1;
    value = value * 10 + digit;
  }
  return value <= most ? value : -1;
}

/**
 * Decimal number in bytes `from` to `to`: optional minus, digits, optional point and digits. NaN if it is none
 * or out of range. Digits are gathered as one whole number and divided once by a power of ten, both exact,
 * so the result is the double nearest to what is written.
 */
export function decimalNumber(bytes: Uint8Array, from: number, to: number, range: NumberRange): number {
  const negative = bytes[from] === MINUS;
  const first = negative ? from + 1 : from;
  let gathered = 0;
  let point = -1;
  for (let at = first; at < to; at++) {
    const digit = (bytes[at] as number) - 0x30;
    if (digit >= 0 && digit <= 9) gathered = gathered * 10 + digit;
    else if (digit === POINT - 0x30 && point < 0) point = at;
    else return Number.NaN;
  }
  const digits = (point < 0 ? to : point) - first;
  const decimals = point < 0 ? 0 : to - point - 1;
  if (digits < 1 || digits > range.digits || decimals > range.decimals) return Number.NaN;
  if (point >= 0 && decimals === 0) return Number.NaN;
  const size = gathered / (POWERS_OF_TEN[decimals] as number);
  const value = negative ? 0 - size : size;
  return value >= range.least && value <= range.most ? value : Number.NaN;
}
