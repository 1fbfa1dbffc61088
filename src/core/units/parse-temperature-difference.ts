import { differenceFToC } from './difference-c-to-f.ts';
import { splitQuantity } from './split-quantity.ts';

const KIND = {
  what: 'temperature difference',
  spellings: {
    f: 'F',
    '°f': 'F',
    ºf: 'F',
    degf: 'F',
    '℉': 'F',
    c: 'C',
    '°c': 'C',
    ºc: 'C',
    degc: 'C',
    '℃': 'C',
    k: 'C',
  },
  examples: '4F, 2.2C or 2.2K',
} as const;

/** Reads a temperature difference with its unit and returns °C of difference: '9F' → 5, '5K' → 5. No + 32. */
export function parseTemperatureDifference(text: string, option: string): number {
  const { value, unit } = splitQuantity<'F' | 'C'>(text, option, KIND);
  return unit === 'F' ? differenceFToC(value) : value;
}
