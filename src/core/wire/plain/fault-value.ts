import type { ChannelFault } from '../WireEvent.ts';
import { celsiusFrom, type TemperatureUnit } from './temperature-unit.ts';

/**
 * Words that readers and loggers print instead of a value (common practice, no source).
 * A word that names its fault keeps it; the rest is 'unspecified'.
 */
const FAULT_WORDS: ReadonlyMap<string, ChannelFault> = new Map<string, ChannelFault>([
  ...[
    'nan',
    '-nan',
    '+nan',
    'nan()',
    '1.#qnan',
    '-1.#ind',
    '1.#ind',
    'inf',
    '-inf',
    '+inf',
    'infinity',
    '-infinity',
    '1.#inf',
    '-1.#inf',
    'err',
    'error',
    'err!',
    '#err',
    '#error',
    '#err!',
    'fault',
    'fail',
    'failed',
    'na',
    'n/a',
    '#n/a',
    '#na',
    'null',
    'none',
    'nil',
    'invalid',
    'bad',
    'lost',
    'undefined',
    '#value!',
    '#num!',
    '#div/0!',
    '?',
    '??',
    '???',
  ].map((word) => [word, 'unspecified'] as const),
  ...[
    'open',
    'opn',
    'open circuit',
    'open-circuit',
    'open_circuit',
    'oc',
    'no probe',
    'disconnected',
    'burnout',
    'burn-out',
    'nc',
    'unplugged',
  ].map((word) => [word, 'open-circuit'] as const),
  ...[
    'ol',
    'o.l',
    '0l',
    '0.l',
    '-ol',
    '+ol',
    'over',
    'ovr',
    'ovl',
    'ovld',
    'overload',
    'overrange',
    'over range',
    'over-range',
    'ovrng',
    '+over',
    '-over',
    'under',
    'underrange',
    '+++',
    '++++',
    '+++++',
    'hhhh',
    'llll',
  ].map((word) => [word, 'over-range'] as const),
  ...['scg', 'short to gnd', 'short to ground'].map((word) => [word, 'short-to-ground'] as const),
  ...['scv', 'short to vcc', 'short to supply'].map((word) => [word, 'short-to-supply'] as const),
]); // prettier-ignore

/** The fault that a word stands for; undefined if it is no fault word. Case does not matter; `--`, `---`, `- - -` are faults. */
export function faultWord(text: string): ChannelFault | undefined {
  const word = text.trim().toLowerCase();
  if (word.length > 16) return undefined;
  return FAULT_WORDS.get(word) ?? (/^(?:-{1,6}|-(?: -){1,5}|-+\.-+)$/.test(word) ? 'unspecified' : undefined);
}

/**
 * Values that readers print for a fault and that could pass for a temperature in some unit
 * (common practice, no source). Values that are no thermocouple temperature at all (-999, -1000,
 * 9999, 32767, 65535, 9.9e37 …) need no list: the range below finds them.
 *  - 2047.75, 2047.9375, 2048: full scale of 12 to 14 bit converters at 1/4, 1/16 and 1 °C steps
 *  - -127 (°C; -196.6 in °F): a common digital sensor that does not answer
 *  - 0 K, and -459.67 °F, -273.15 °C: absolute zero from a zeroed register
 */
const FULL_SCALE: ReadonlySet<number> = new Set([2047.75, 2047.8, 2047.9375, 2047.94, 2048, 3276.7, 6553.5]);
const NO_ANSWER: Readonly<Record<TemperatureUnit, number>> = { C: -127, F: -196.6, K: 146.15 };

/** Ends of the type K reference function, -270 °C to 1372 °C (ITS-90, NIST Monograph 175): beyond is no reading at a press. */
const LOWEST_C = -270;
const HIGHEST_C = 1372;

/** Values far outside that are printed for a fault, exactly so (common practice, no source). */
const OUTSIDE: ReadonlySet<number> = new Set([
  -999, -999.9, -1000, -9999, -32768, -32767, 9999, 9999.9, 32767, 32768, 65535, 65536, 99999, 2147483647,
  -2147483648, 4294967295, 1e9, 9.9e37, 9.91e37, -9.9e37,
]);

/** Whether a number is one of the listed fault values, exactly. */
export function isKnownFaultValue(value: number, unit: TemperatureUnit): boolean {
  return FULL_SCALE.has(value) || OUTSIDE.has(value) || value === -127 || value === NO_ANSWER[unit];
}

/**
 * Whether a number that a reader printed in `unit` stands for a fault rather than a temperature: listed,
 * or beyond the range of a type K thermocouple. Inside that range only the listed values exactly
 * (-127, not -126.9 or -127.3) are taken out; a bond line at a press is never there.
 */
export function isFaultValue(value: number, unit: TemperatureUnit): boolean {
  if (isKnownFaultValue(value, unit)) return true;
  const celsius = celsiusFrom(value, unit);
  return !(celsius > LOWEST_C && celsius < HIGHEST_C);
}
