import { describe, expect, it } from 'vitest';
import { sampleMean } from '../../../src/core/statistics/sample-mean.ts';
import { sampleSd } from '../../../src/core/statistics/sample-sd.ts';
import { certified, column } from './published.ts';

/** Digits that agree with the certified value: −log10 of the relative error, 16 when equal. */
function digits(value: number, certifiedValue: number): number {
  return value === certifiedValue ? 16 : -Math.log10(Math.abs((value - certifiedValue) / certifiedValue));
}

// NIST/ITL StRD univariate sets. NumAcc3 and NumAcc4 lose digits in the data themselves: 1000000.2 as a
// double is off by 5e-11, which is 9 digits of a deviation of 0.1 (8 for 10000000.2).
const SD_DIGITS: Record<string, number> = {
  NumAcc1: 15,
  NumAcc2: 14,
  NumAcc3: 9,
  NumAcc4: 8,
  Michelso: 13,
  Mavro: 13,
  Lottery: 15,
  Lew: 15,
};

describe('mean and standard deviation on NIST StRD', () => {
  for (const [name, set] of Object.entries(certified())) {
    const values = column(`strd/${name}.csv`);
    it(`${name}: ${set.n} values, mean to 15 digits, deviation to ${SD_DIGITS[name]}`, () => {
      expect(values.length).toBe(set.n);
      expect(digits(sampleMean(values), set.certified_mean)).toBeGreaterThanOrEqual(15);
      expect(digits(sampleSd(values), set.certified_sd)).toBeGreaterThanOrEqual(SD_DIGITS[name] ?? 16);
    });
  }

  it.each([[Number.NaN], [Number.POSITIVE_INFINITY]])('refuses %s among the values', (bad) => {
    expect(() => sampleMean([53, bad])).toThrow(expect.objectContaining({ code: 'value-not-finite' }));
    expect(() => sampleSd([53, bad, 54])).toThrow(expect.objectContaining({ code: 'value-not-finite' }));
  });

  it('refuses a mean of no value and a deviation of one', () => {
    expect(() => sampleMean([])).toThrow(expect.objectContaining({ code: 'too-few-values' }));
    expect(() => sampleSd([53])).toThrow(expect.objectContaining({ code: 'too-few-values' }));
  });
});
