import { faultWord, isFaultValue } from '../wire/plain/fault-value.ts';
import { type DecimalSign, readNumber } from '../wire/plain/read-number.ts';
import { celsiusFrom, type TemperatureUnit, wholeTemperatureUnit } from '../wire/plain/temperature-unit.ts';
import type { ChannelValue } from '../wire/WireEvent.ts';
import { isShortClock, readStamp } from './read-stamp.ts';

export type LoggerCellKind = 'empty' | 'number' | 'stamp' | 'fault' | 'text';

const WITH_UNIT = /^([+\-\u2212]?[\d.,]*\d[.,]?)\s*([°º˚℃℉a-z][°º a-z]*)$/i;

/** A limit instead of a value: `>1372`, `< -200 C`. */
const BEYOND = /^[<>]=? ?[+\-\u2212]?\d[\d.,]*(?: ?[°º˚]?[CFK])?$/i;

/** A number, also with its unit behind (`231.2 C`). */
export function numberAndUnit(
  cell: string,
  decimal: DecimalSign,
): { readonly value: number; readonly unit: TemperatureUnit | null } | undefined {
  const value = readNumber(cell, decimal);
  if (value !== undefined) return { value, unit: null };
  const [, number = '', unitText = ''] = WITH_UNIT.exec(cell) ?? [];
  const unit = unitText === '' ? undefined : wholeTemperatureUnit(unitText);
  const withUnit = unit ? readNumber(number, decimal) : undefined;
  return withUnit === undefined ? undefined : { value: withUnit, unit: unit ?? null };
}

/** What a cell looks like by itself. */
export function loggerCellKind(cell: string, decimal: DecimalSign | 'either'): LoggerCellKind {
  if (cell === '') return 'empty';
  if (numberAndUnit(cell, decimal === 'either' ? '.' : decimal)) return 'number';
  if (decimal === 'either' && numberAndUnit(cell, ',')) return 'number';
  if (isShortClock(cell) || readStamp(cell, 'day-first') || readStamp(cell, 'month-first')) return 'stamp';
  return faultWord(cell) || BEYOND.test(cell) ? 'fault' : 'text';
}

/**
 * What a temperature cell says: a temperature, a fault (word or listed value), or missing where it is empty.
 * A word without digits (`lost`) is a fault; undefined for a garbled number, which is no reading at all.
 */
export function loggerValue(
  cell: string,
  decimal: DecimalSign,
  unit: TemperatureUnit,
): ChannelValue | undefined {
  if (cell === '') return { kind: 'missing' };
  const number = numberAndUnit(cell, decimal);
  if (number) {
    const own = number.unit ?? unit;
    if (isFaultValue(number.value, own)) return { kind: 'fault', fault: 'unspecified' };
    return { kind: 'temperature', temperatureC: celsiusFrom(number.value, own) };
  }
  const fault = BEYOND.test(cell) ? 'over-range' : faultWord(cell);
  if (fault) return { kind: 'fault', fault };
  return /\d/.test(cell) ? undefined : { kind: 'fault', fault: 'unspecified' };
}
