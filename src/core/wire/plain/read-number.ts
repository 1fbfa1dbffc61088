export type DecimalSign = '.' | ',';

const POINT = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?$/;
const COMMA = /^[+-]?(?:\d+,?\d*|,\d+)(?:[eE][+-]?\d{1,3})?$/;
const POINT_THOUSANDS = /^[+-]?\d{1,3}(?:[,' \u00a0\u202f]\d{3})+(?:\.\d+)?$/;
const COMMA_THOUSANDS = /^[+-]?\d{1,3}(?:[.' \u00a0\u202f]\d{3})+(?:,\d+)?$/;

/**
 * A number as readers and loggers print it, all of `text` or nothing: `231.25`, `-4.`, `.5`, `1.2e3`,
 * with decimal comma `231,25`, with groups of thousands `1,234.5` or `1.234,5`. Undefined for anything else,
 * never NaN or infinite.
 */
export function readNumber(text: string, decimal: DecimalSign = '.'): number | undefined {
  let plain = text.charCodeAt(0) === 0x2212 ? `-${text.slice(1)}` : text;
  if (decimal === '.') {
    if (!POINT.test(plain)) {
      if (!POINT_THOUSANDS.test(plain)) return undefined;
      plain = plain.replace(/[,' \u00a0\u202f]/g, '');
    }
  } else {
    if (!COMMA.test(plain)) {
      if (!COMMA_THOUSANDS.test(plain)) return undefined;
      plain = plain.replace(/[.' \u00a0\u202f]/g, '');
    }
    plain = plain.replace(',', '.');
  }
  const value = Number(plain);
  return Number.isFinite(value) ? value : undefined;
}

/** Digits after the decimal sign: 2 for `231.25`, 0 for `231`. */
export function decimalsOf(text: string, decimal: DecimalSign = '.'): number {
  const at = text.indexOf(decimal);
  if (at < 0) return 0;
  const end = text.search(/[eE]/);
  return (end < 0 ? text.length : end) - at - 1;
}
