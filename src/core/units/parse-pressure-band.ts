import { parsePressure } from './parse-pressure.ts';
import { UnitError } from './UnitError.ts';

/**
 * Reads a band of pressures, lower end first, or one value for both ends; a unit at the end serves for both. Returns psi.
 * Refuses what falls. Examples: '200psi/250psi', '200-250 psi', '13.8bar to 17.2bar', '220psi'.
 */
export function parsePressureBand(
  text: string,
  option: string,
): { readonly low: number; readonly high: number } {
  const [first = '', second, ...more] = text.trim().split(/\s*(?:\/|–|-|\bto\b)\s*/u);
  const unit = /[a-z].*$/iu.exec(second ?? '')?.[0] ?? '';
  const low = parsePressure(/[a-z]/iu.test(first) ? first : `${first}${unit}`, option);
  const high = second === undefined ? low : parsePressure(second, option);
  if (more.length === 0 && high >= low && low > 0) return { low, high };
  throw new UnitError(
    'value-out-of-range',
    `${option}: expected one pressure, or a lower and an upper one above 0, came "${text}"`,
    { option, given: text, remedy: 'Write for example 200psi/250psi' },
  );
}
