export type TemperatureUnit = 'C' | 'F' | 'K';

/** Longer text is no heading and is not searched. */
export const LONGEST_HEADING = 200;

const WHOLE =
  /^[[({<]?\s*(?:in\s+)?(?:°|º|˚|deg(?:rees?)?\.?|grad|o)?[\s_]*(c|f|k|celsius|centigrade|fahrenheit|kelvin)\.?\s*[\])}>]?$/i;
const SINGLE: Readonly<Record<string, TemperatureUnit>> = { '℃': 'C', '℉': 'F', K: 'K' };
const BRACKETED = /\(([^()]*)\)|\[([^[\]]*)\]|\{([^{}]*)\}|<([^<>]*)>/g;
const MARKED = /(?:°|º|˚|\bdeg(?:rees?)?\.?)[\s_]*(celsius|fahrenheit|kelvin|c|f|k)(?![a-z])/i;
const SUFFIXED = /^(.*?)[_,\s/-]+(?:deg[\s_]?)?(c|f|k)$/i;
/** `T1_K`, `Temp F` end in a unit; `Probe C`, `Thermocouple K`, `Type K`, `T_C` may not: a probe or wire can be named so. */
const UNIT_MAY_FOLLOW = /temp|\d$|bond|platen|carrier|ambient/i;
const NAME_FOLLOWS = /(?:type|thermocouple|tc|probe|channel|sensor|ch)[\s_]*$/i;
const WORD = /(?<![a-z])(celsius|centigrade|fahrenheit|kelvin)(?![a-z])/i;
const CAMEL = /(?:temp|temperature|deg|[a-z]\d*)([CFK])$/;

function letter(text: string): TemperatureUnit {
  const first = text.charAt(0).toUpperCase();
  return first === 'F' ? 'F' : first === 'K' ? 'K' : 'C';
}

/** The unit that a piece of text is, all of it: `C`, `°F`, `[K]`, `deg C`, `℃`. Undefined for anything else. */
export function wholeTemperatureUnit(text: string): TemperatureUnit | undefined {
  if (text.length > LONGEST_HEADING) return undefined;
  const trimmed = text.trim();
  const single = SINGLE[trimmed.replace(/^[[({<]\s*|\s*[\])}>]$/g, '')];
  if (single) return single;
  const found = WHOLE.exec(trimmed);
  return found ? letter(found[1] ?? '') : undefined;
}

/** The unit inside a heading: `T1 (°C)`, `Temp_F`, `T [degC]`, `tempC`, `Bond line, K`. Undefined where none stands. */
export function temperatureUnitInHeading(heading: string): TemperatureUnit | undefined {
  if (heading.length > LONGEST_HEADING) return undefined;
  if (/[℃]/.test(heading)) return 'C';
  if (/[℉]/.test(heading)) return 'F';
  for (const [, ...inside] of heading.matchAll(BRACKETED)) {
    const unit = wholeTemperatureUnit(inside.find((text) => text !== undefined) ?? '');
    if (unit) return unit;
  }
  const found = MARKED.exec(heading) ?? WORD.exec(heading) ?? CAMEL.exec(heading.trim());
  if (found) return letter(found[1] ?? '');
  const [, stem = '', suffix] = SUFFIXED.exec(heading.trim()) ?? [];
  return suffix && UNIT_MAY_FOLLOW.test(stem) && !NAME_FOLLOWS.test(stem) ? letter(suffix) : undefined;
}

/**
 * Temperature in °C from a value in `unit`. Exact by definition: t/°C = T/K − 273.15 and
 * t/°C = (t/°F − 32)/1.8 (SI Brochure, 9th edition, 2.3.1; NIST SP 811, B.9).
 */
export function celsiusFrom(value: number, unit: TemperatureUnit): number {
  if (unit === 'C') return value;
  return unit === 'K' ? value - 273.15 : (value - 32) / 1.8;
}

export const UNIT_WORDS: Readonly<Record<TemperatureUnit, string>> = {
  C: 'degrees Celsius',
  F: 'degrees Fahrenheit',
  K: 'kelvin',
};
