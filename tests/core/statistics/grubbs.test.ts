import { describe, expect, it } from 'vitest';
import { grubbs } from '../../../src/core/statistics/grubbs.ts';
import { column, example } from './published.ts';

/** The same critical values recomputed with scipy 1.17. */
const SCIPY: Record<string, number> = {
  '0.10': 2.846331239360917,
  '0.05': 3.0141094999991145,
  '0.025': 3.1688116961386346,
  '0.01': 3.356072938885536,
};

describe('Grubbs test', () => {
  it('NIST/SEMATECH 1.3.5.17.1: G 2.4687, critical 2.032 (one side), 245.57 is an outlier', () => {
    const { published, recomputed } = example('grubbs-nist-1.3.5.17.1');
    const values = column('tietjen-moore-8.csv');
    const result = grubbs(values, { side: 'highest' });
    // The printed G is truncated: 2.46876 became 2.4687.
    expect(Math.abs(result.g - published.G)).toBeLessThan(0.0001);
    expect(Math.abs(result.g - recomputed.G)).toBeLessThan(1e-9);
    expect(Math.abs(result.critical - published.critical_value_one_sided)).toBeLessThan(0.0006);
    expect(values[result.index]).toBe(245.57);
    expect(result.flagged).toBe(true);
    expect(Math.abs(grubbs(values).critical - recomputed.critical_value_two_sided)).toBeLessThan(1e-9);
  });

  it('VANGEL31 (NIST Dataplot): G 2.4312, critical 3.013 at 5 %, no outlier at any of four levels', () => {
    const { published } = example('grubbs-dataplot-vangel31');
    const values = column('vangel31.csv');
    for (const [level, critical] of Object.entries<number>(published.critical)) {
      const result = grubbs(values, { significance: Number(level) });
      expect(Math.abs(result.g - published.G)).toBeLessThan(0.00011);
      // Printed from single precision and truncated: 3.0141095 (scipy 1.17) became 3.013.
      expect(Math.abs(result.critical - critical), level).toBeLessThan(0.0012);
      expect(Math.abs(result.critical - (SCIPY[level] ?? 0)), level).toBeLessThan(1e-9);
      expect(result.flagged).toBe(false);
    }
    expect(values[grubbs(values).index]).toBe(231);
  });

  it('finds the lowest value, and nothing among equal ones', () => {
    expect(grubbs([50, 50.1, 49.9, 50.05, 30], { side: 'lowest' })).toMatchObject({
      index: 4,
      flagged: true,
    });
    expect(grubbs([50, 50, 50, 50, 50])).toMatchObject({ g: 0, flagged: false });
  });

  it('refuses two values and NaN', () => {
    expect(() => grubbs([1, 2])).toThrow(expect.objectContaining({ code: 'too-few-values' }));
    expect(() => grubbs([1, 2, Number.NaN])).toThrow(expect.objectContaining({ code: 'value-not-finite' }));
  });
});
