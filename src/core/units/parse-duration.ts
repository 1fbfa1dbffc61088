import { readNumber } from './read-number.ts';
import { UnitError } from './UnitError.ts';

const SECONDS: Readonly<Record<string, number>> = {
  ms: 0.001,
  s: 1,
  sec: 1,
  second: 1,
  seconds: 1,
  m: 60,
  min: 60,
  minute: 60,
  minutes: 60,
  h: 3600,
  hr: 3600,
  hour: 3600,
  hours: 3600,
};
const PART = /(\d[\d.,]*|\.\d+)\s*([a-z]+)?\s*/giy;
const EXAMPLES = 'for example 120s, 2min, 1m30s or 500ms';

/**
 * Reads a duration with its units (`120s`, `2min`, `1m30s`, `12,5 s`, `500ms`) and returns seconds.
 * Refuses a part without a unit, an unknown unit, units that do not fall (`30s1m`), and a negative
 * duration unless `negative` allows it (a timer's offset may be negative). Example: '1m30s' → 90.
 */
export function parseDuration(text: string, option: string, { negative = false } = {}): number {
  const trimmed = text.trim().replace('−', '-');
  const unsigned = trimmed.replace(/^[+-]\s*/u, '');
  const seconds = sumOfParts(unsigned, text, option);
  if (!trimmed.startsWith('-')) return seconds;
  if (negative) return seconds === 0 ? 0 : -seconds;
  throw new UnitError('value-out-of-range', `${option}: "${text}" is negative`, {
    option,
    given: text,
    remedy: `Give a duration of zero or more, ${EXAMPLES}`,
  });
}

function sumOfParts(unsigned: string, given: string, option: string): number {
  let thousandths = 0;
  let smallest = Number.POSITIVE_INFINITY;
  let end = 0;
  for (const match of unsigned.matchAll(PART)) {
    const [whole, digits = '', unitText] = match;
    const value = readNumber(digits, { option, given });
    const unitS = secondsOf(unitText, given, option);
    if (unitS >= smallest) break;
    smallest = unitS;
    // In thousandths of a second, so that 500 ms and tenths add up without dust.
    thousandths += value * (unitS * 1000);
    end += whole.length;
  }
  if (end > 0 && end === unsigned.length) return thousandths / 1000;
  throw new UnitError('number-unreadable', `${option}: expected a duration with its unit, came "${given}"`, {
    option,
    given,
    remedy: `Write number and unit, largest unit first, ${EXAMPLES}`,
  });
}

function secondsOf(unitText: string | undefined, given: string, option: string): number {
  if (unitText === undefined) {
    throw new UnitError('unit-missing', `${option}: "${given}" lacks a unit`, {
      option,
      given,
      remedy: `Give the duration with its unit, ${EXAMPLES}`,
    });
  }
  const spelling = unitText.toLowerCase();
  const unitS = Object.hasOwn(SECONDS, spelling) ? SECONDS[spelling] : undefined;
  if (unitS !== undefined) return unitS;
  throw new UnitError('unit-unknown', `${option}: "${unitText}" is no unit of time known here`, {
    option,
    given,
    remedy: `Use ms, s, min or h, ${EXAMPLES}`,
  });
}
