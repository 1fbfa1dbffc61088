import { describe, expect, it } from 'vitest';
import { meanInterval } from '../../../src/core/statistics/mean-interval.ts';
import { moreValuesForWidth } from '../../../src/core/statistics/more-values-for-width.ts';
import { nextValueUpper } from '../../../src/core/statistics/next-value-upper.ts';
import { noncentralTCdf } from '../../../src/core/statistics/noncentral-t-cdf.ts';
import { toleranceFactor } from '../../../src/core/statistics/tolerance-factor.ts';
import { column, example } from './published.ts';

/** n values with mean 0 and sample deviation 1, so that a bound is its factor. */
function standardSample(n: number): readonly number[] {
  const raw = Array.from({ length: n }, (_, index) => index - (n - 1) / 2);
  const sd = Math.sqrt(raw.reduce((sum, value) => sum + value * value, 0) / (n - 1));
  return Object.freeze(raw.map((value) => value / sd));
}

describe('confidence interval of the mean', () => {
  it('ZARR13: 9.258242 to 9.264679 (NIST/SEMATECH e-Handbook 1.3.5.2)', () => {
    const [low, high] = meanInterval(column('zarr13.csv'));
    const [printedLow, printedHigh] = example('ci-mean-nist-1.3.5.2').published.ci95;
    expect(Math.abs(low - printedLow)).toBeLessThan(1e-6);
    expect(Math.abs(high - printedHigh)).toBeLessThan(1e-6);
  });

  it('ZARR13 at five further confidences as recomputed with scipy', () => {
    const { levels } = example('ci-mean-nist-1.3.5.2').recomputed;
    for (const [confidence, level] of Object.entries<{ low: number; high: number }>(levels)) {
      const [low, high] = meanInterval(column('zarr13.csv'), Number(confidence));
      expect(Math.abs(low - level.low)).toBeLessThan(1e-6);
      expect(Math.abs(high - level.high)).toBeLessThan(1e-6);
    }
  });

  it('needs two values', () => {
    expect(() => meanInterval([53.5])).toThrow(expect.objectContaining({ code: 'too-few-values' }));
  });
});

describe('prediction bound for the next value', () => {
  const { n, one_sided_95_m1: factors } = example('prediction-factors-student').recomputed;

  it.each<[number, number]>(n.map((count: number, index: number) => [count, factors[index]]))(
    'from %i values lies %s deviations above the mean (factors by scipy)',
    (count, factor) => {
      expect(Math.abs(nextValueUpper(standardSample(count)) - factor)).toBeLessThan(1e-6);
    },
  );
});

describe('one-sided tolerance factor', () => {
  for (const { confidence, coverage, n, k_exact, k_published_3dp } of example('k-factors-one-sided-normal')
    .published) {
    it(`content ${coverage}, confidence ${confidence}: ten published factors to the third decimal, scipy's to 6`, () => {
      n.forEach((count: number, index: number) => {
        const factor = toleranceFactor(count, coverage, confidence);
        expect(Math.abs(factor - k_published_3dp[index]), `n ${count}`).toBeLessThan(0.00051);
        expect(Math.abs(factor - k_exact[index]), `n ${count}`).toBeLessThan(2e-6);
      });
    });
  }

  it('NIST/SEMATECH e-Handbook 7.2.6.3: 1.8740 at n = 43 and 4.4111 at n = 6 (content 0.90, confidence 0.99)', () => {
    const printed = example('tolerance-nist-7.2.6.3').published;
    expect(Math.abs(toleranceFactor(43, 0.9, 0.99) - printed.k1_one_sided_noncentral_t)).toBeLessThan(
      0.00006,
    );
    expect(Math.abs(toleranceFactor(6, 0.9, 0.99) - printed.N6_k1_noncentral_t)).toBeLessThan(0.00006);
  });

  it('refuses one value, and a content given as a percentage', () => {
    expect(() => toleranceFactor(1)).toThrow(expect.objectContaining({ code: 'too-few-values' }));
    expect(() => toleranceFactor(3, 95)).toThrow(
      expect.objectContaining({ code: 'probability-out-of-range' }),
    );
  });
});

describe('noncentral t distribution function', () => {
  // Closed form at t = 0: Φ(−noncentrality), whatever the degrees of freedom.
  it.each([
    [0, 0.5],
    [1.6448536269514722, 0.05],
    [-1.2815515655446004, 0.9],
  ])('at 0 with noncentrality %s is %s', (noncentrality, probability) => {
    for (const dof of [1, 2, 5, 40]) {
      expect(Math.abs(noncentralTCdf(0, dof, noncentrality) - probability)).toBeLessThan(1e-9);
    }
  });
});

describe('values still needed', () => {
  // By hand from the t table: s = 2, wanted ±2. n = 5: 2.776·2/√5 = 2.48 > 2; n = 6: 2.571·2/√6 = 2.10 > 2;
  // n = 7: 2.447·2/√7 = 1.85 ≤ 2.
  it('with a deviation of 2 and ±2 wanted, 3 runs need about 4 more', () => {
    expect(moreValuesForWidth({ values: 3, sd: 2, wantedHalfWidth: 2 })).toBe(4);
  });

  it('says 0 when the interval is inside already and null when a thousand would not do', () => {
    expect(moreValuesForWidth({ values: 7, sd: 2, wantedHalfWidth: 2 })).toBe(0);
    expect(moreValuesForWidth({ values: 3, sd: 100, wantedHalfWidth: 2 })).toBeNull();
  });

  it.each([
    { values: 1, sd: 1, wantedHalfWidth: 1 },
    { values: 3, sd: Number.NaN, wantedHalfWidth: 1 },
    { values: 3, sd: 1, wantedHalfWidth: 0 },
  ])('refuses %o', (input) => {
    expect(() => moreValuesForWidth(input)).toThrow(expect.objectContaining({ code: 'option-out-of-range' }));
  });
});
