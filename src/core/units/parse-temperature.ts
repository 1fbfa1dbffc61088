import { KELVIN_AT_ZERO_C } from './exact-factors.ts';
import { splitQuantity } from './split-quantity.ts';
import { temperatureFToC } from './temperature-c-to-f.ts';
import { UnitError } from './UnitError.ts';

const KIND = {
  what: 'temperature',
  spellings: {
    f: 'F',
    '°f': 'F',
    ºf: 'F',
    degf: 'F',
    fahrenheit: 'F',
    c: 'C',
    '°c': 'C',
    ºc: 'C',
    degc: 'C',
    celsius: 'C',
    '℃': 'C',
    '℉': 'F',
    k: 'K',
    kelvin: 'K',
  },
  examples: '350F, 176.7C or 450K',
} as const;

/**
 * Reads a temperature with its unit (`350F`, `350 °F`, `176,7C`, `450K`) and returns °C.
 * Refuses a missing or unknown unit and anything below absolute zero. Example: '212F' → 100.
 */
export function parseTemperature(text: string, option: string): number {
  const { value, unit } = splitQuantity<'F' | 'C' | 'K'>(text, option, KIND);
  const temperatureC =
    unit === 'F' ? temperatureFToC(value) : unit === 'K' ? value - KELVIN_AT_ZERO_C : value;
  if (temperatureC < -KELVIN_AT_ZERO_C - 1e-9) {
    throw new UnitError('value-out-of-range', `${option}: "${text}" is below absolute zero`, {
      option,
      given: text,
      remedy: 'Check the number and its unit',
    });
  }
  return temperatureC;
}
