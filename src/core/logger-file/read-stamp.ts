import type { DateOrder, ShortClock } from './LoggerLayout.ts';
import { monthOf } from './month-of.ts';
import { readSpan } from './read-span.ts';

/** A clock stamp taken apart. Days count from 1970-01-01. */
export interface Stamp {
  readonly day: number | null;
  /** Microseconds of the day; null for a date alone. */
  readonly timeUs: number | null;
  /** Smallest step written, µs. */
  readonly stepUs: number;
}

const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?=$|[T ,_])/i;
const YEAR_LAST = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})(?=$|[T ,_])/i;
const MONTH_NAME = /^(\d{1,2})\.?[- ]?(\p{L}{3,10})\.?[- ,]*(\d{4}|\d{2})(?=$|[T ,_])/iu;
const NAME_FIRST = /^(\p{L}{3,10})\.? (\d{1,2}),? (\d{4})(?=$|[T ,_])/iu;
const CLOCK =
  /^(\d{1,3}):(\d{2})(?::(\d{2})(?:[.,:](\d{1,9}))?)?\s*([ap])?\.?\s?(?:m\.?)?\s*(z|utc|[a-z]{1,3}t|[+-]\d{2}:?\d{2}|[+-]\d{2})?$/i;
const SHORT = /^(\d{1,4}):(\d{2})(?:[.,](\d{1,9}))?$/;
const DAY_US = 86_400e6;
const WEEKDAY = /^(?:mon|tue|wed|thu|fri|sat|sun)[a-z]{0,6}[.,]? +(?=\S)/i;
/** `20260302T100000.5Z`, `20260302 10:00:00`: the basic form of ISO 8601. */
const BASIC = /^(\d{4})(\d{2})(\d{2})[T ]+(\d{2}):?(\d{2}):?(\d{2})((?:[.,]\d{1,9})?.*)$/i;
const CLOCK_FIRST = /^(\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d{1,9})?)?(?:\s*[ap]\.?m\.?)?)[ ,]+(\S.*)$/i;

/** A clock of two numbers, which could be hours and minutes or minutes and seconds; only the latter has a fraction. */
export function isShortClock(text: string): 'plain' | 'fraction' | undefined {
  const found = SHORT.exec(text);
  return found ? (found[3] ? 'fraction' : 'plain') : undefined;
}

function shortStamp(
  [, first = '', second = '', fraction = '0']: readonly string[],
  short: ShortClock,
): Stamp | undefined {
  if (Number(second) > 59) return undefined;
  const units = Number(first) * 60 + Number(second) + Number(`0.${fraction}`);
  const unitUs = short === 'h' ? 60e6 : 1e6;
  return {
    day: null,
    timeUs: Math.round(units * unitUs),
    stepUs: fraction === '0' ? unitUs : unitUs / 10 ** fraction.length,
  };
}

function dayNumber(year: number, month: number, day: number): number | undefined {
  const fullYear = year < 100 ? 2000 + year : year;
  const ms = Date.UTC(fullYear, month - 1, day);
  const date = new Date(ms);
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day ? ms / 86_400_000 : undefined;
}

function readDate(
  text: string,
  order: DateOrder,
): { readonly day: number; readonly length: number } | undefined {
  const found =
    YEAR_FIRST.exec(text) ?? YEAR_LAST.exec(text) ?? MONTH_NAME.exec(text) ?? NAME_FIRST.exec(text);
  if (!found) return undefined;
  const [whole, one = '', two = '', three = ''] = found;
  let day: number | undefined;
  if (/^\d{4}$/.test(one)) day = dayNumber(Number(one), Number(two), Number(three));
  else if (/\p{L}/u.test(two)) day = dayNumber(Number(three), monthOf(two), Number(one));
  else if (/\p{L}/u.test(one)) day = dayNumber(Number(three), monthOf(one), Number(two));
  else if (order === 'day-first') day = dayNumber(Number(three), Number(two), Number(one));
  else day = dayNumber(Number(three), Number(one), Number(two));
  return day === undefined ? undefined : { day, length: whole.length };
}

function zoneUs(zone: string | undefined): number {
  if (!zone || !/^[+-]/.test(zone)) return 0;
  const digits = zone.replace(/\D/g, '').padEnd(4, '0');
  const minutes = Number(digits.slice(0, 2)) * 60 + Number(digits.slice(2, 4));
  return (zone.startsWith('-') ? -1 : 1) * minutes * 60e6;
}

/**
 * Reads a clock stamp, all of `text`: `2024-05-01T10:00:00.250Z`, `2024-05-01 10:00:00`, `5/1/2024 10:00:00 AM`,
 * `01.05.2024 10:00:00`, `1-May-2024 10:00`, `20240501T100000`, `Wed 2024-05-01 10:00`, `10:00:00,250`, a date alone, a
 * span such as `1d 02h 00m 03s` or `12.5 s`. Two numbers alone
 * (`10:30`) are read only if `short` says what the first is. Undefined for anything else. `order` settles `5/1/2024`.
 */
export function readStamp(
  text: string,
  order: DateOrder,
  short: ShortClock | null = null,
): Stamp | undefined {
  const brief = SHORT.exec(text);
  if (brief) return short ? shortStamp(brief, short) : undefined;
  const span = readSpan(text);
  if (span !== undefined) return { day: null, ...span };
  return dateAndClock(usualForm(text), order);
}

/** The same stamp with its date first, written with signs, and without the weekday. */
function usualForm(text: string): string {
  const plain = text.replace(WEEKDAY, '');
  const basic = BASIC.exec(plain);
  if (basic) {
    const [, year, month, day, hour, minute, second, rest] = basic;
    return `${year}-${month}-${day} ${hour}:${minute}:${second}${rest}`;
  }
  const [, clock = '', date = ''] = CLOCK_FIRST.exec(plain) ?? [];
  return date !== '' && (readDate(date, 'day-first') || readDate(date, 'month-first'))
    ? `${date} ${clock}`
    : plain;
}

function dateAndClock(text: string, order: DateOrder): Stamp | undefined {
  const date = readDate(text, order);
  const rest = date ? text.slice(date.length).replace(/^[T ,_]+/i, '') : text;
  if (date && rest === '') return { day: date.day, timeUs: null, stepUs: DAY_US };
  const clock = CLOCK.exec(rest);
  if (!clock) return undefined;
  const [, hours = '', minutes = '', seconds, fraction = '', half, zone] = clock;
  if (seconds === undefined && !date) return undefined;
  let hour = Number(hours);
  if (half) {
    if (hour < 1 || hour > 12) return undefined;
    hour = (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  }
  if (Number(minutes) > 59 || Number(seconds ?? 0) > 60 || (date && hour > 24)) return undefined;
  const timeUs =
    (hour * 3600 + Number(minutes) * 60 + Number(seconds ?? 0)) * 1e6 +
    Math.round(Number(`0.${fraction === '' ? '0' : fraction}`) * 1e6) -
    zoneUs(zone);
  const stepUs = seconds === undefined ? 60e6 : fraction === '' ? 1e6 : 1e6 / 10 ** fraction.length;
  return { day: date?.day ?? null, timeUs, stepUs };
}

/** Order of day and month in dates written with the year last, from the dates themselves; null where both fit. */
export function dateOrder(texts: readonly string[]): DateOrder | null {
  for (const text of texts) {
    const found = YEAR_LAST.exec(usualForm(text));
    if (!found) continue;
    if (Number(found[1]) > 12) return 'day-first';
    if (Number(found[2]) > 12) return 'month-first';
  }
  const halves = texts.some((text) => /[ap]\.?m\.?$/i.test(text));
  if (halves) return 'month-first';
  return texts.some((text) => /^\d{1,2}\.\d{1,2}\./.test(text)) ? 'day-first' : null;
}
