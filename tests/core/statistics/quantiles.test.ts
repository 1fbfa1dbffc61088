import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../../src/core/statistics/normal-quantile.ts';
import { studentTCdf } from '../../../src/core/statistics/student-t-cdf.ts';
import { studentTQuantile } from '../../../src/core/statistics/student-t-quantile.ts';
import { example } from './published.ts';

describe('Student t quantile', () => {
  const table = example('student-t-table');

  it('gives all 140 entries of the NIST/SEMATECH table 1.3.6.7.2 to the printed third decimal', () => {
    let entries = 0;
    for (const [row, printed] of Object.entries<number[]>(table.published.rows)) {
      const degreesOfFreedom = row === 'inf' ? Number.POSITIVE_INFINITY : Number(row);
      table.published.columns_cumulative_probability.forEach((probability: number, index: number) => {
        const value = studentTQuantile(probability, degreesOfFreedom);
        expect(Math.abs(value - printed[index]!), `${probability}, ${row}`).toBeLessThan(0.00051);
        entries += 1;
      });
    }
    expect(entries).toBe(140);
  });

  it('gives both columns of GUM table G.2 to the printed digits', () => {
    const g2 = example('gum-table-g2').published;
    g2.dof.forEach((row: number | 'inf', index: number) => {
      const degreesOfFreedom = row === 'inf' ? Number.POSITIVE_INFINITY : row;
      expect(Math.abs(studentTQuantile(0.975, degreesOfFreedom) - g2.t_95[index])).toBeLessThan(0.0051);
      expect(
        Math.abs(studentTQuantile((1 + 0.9545) / 2, degreesOfFreedom) - g2['t_95.45'][index]),
      ).toBeLessThan(0.0051);
    });
  });

  // Closed forms: 1 degree of freedom is Cauchy, t = tan(π(p − ½)); 2 degrees, t = (2p − 1)/√(2p(1 − p)).
  it.each([0.001, 0.05, 0.25, 0.6, 0.95, 0.975, 0.999])(
    'agrees with the closed forms at p = %s to 1e-12',
    (p) => {
      const cauchy = Math.tan(Math.PI * (p - 0.5));
      const two = (2 * p - 1) / Math.sqrt(2 * p * (1 - p));
      expect(Math.abs(studentTQuantile(p, 1) / cauchy - 1)).toBeLessThan(1e-12);
      expect(Math.abs(studentTQuantile(p, 2) / two - 1)).toBeLessThan(1e-12);
    },
  );

  it('joins the normal quantile without a step at many degrees of freedom', () => {
    for (const dof of [1e6, 9.9e8, 1.1e9, Number.POSITIVE_INFINITY]) {
      // Cornish-Fisher first term: t ≈ z + (z³ + z)/(4·dof) (Abramowitz and Stegun 26.7.5).
      const z = 1.959963984540054;
      expect(Math.abs(studentTQuantile(0.975, dof) - (z + (z ** 3 + z) / (4 * dof)))).toBeLessThan(1e-8);
    }
  });

  it.each([0, 1, -0.1, 95, Number.NaN])('refuses the probability %s', (p) => {
    expect(() => studentTQuantile(p, 3)).toThrow(
      expect.objectContaining({ code: 'probability-out-of-range' }),
    );
  });

  it.each([0, -1, Number.NaN])('refuses %s degrees of freedom', (dof) => {
    expect(() => studentTQuantile(0.95, dof)).toThrow(expect.objectContaining({ code: 'too-few-values' }));
  });
});

describe('Student t distribution function', () => {
  // Closed forms as above: F(t) = ½ + atan(t)/π, and ½ + t/(2√(2 + t²)).
  it.each([-30, -2.5, -0.1, 0, 0.7, 4.303, 200])('agrees with the closed forms at t = %s to 1e-13', (t) => {
    expect(Math.abs(studentTCdf(t, 1) - (0.5 + Math.atan(t) / Math.PI))).toBeLessThan(1e-13);
    expect(Math.abs(studentTCdf(t, 2) - (0.5 + t / (2 * Math.sqrt(2 + t * t))))).toBeLessThan(1e-13);
  });

  it('refuses NaN', () => {
    expect(() => studentTCdf(Number.NaN, 2)).toThrow(
      expect.objectContaining({ code: 'option-out-of-range' }),
    );
  });
});

describe('normal quantile', () => {
  // Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.5 (from memory; the digits are also
  // the last row of the t table and standard knowledge).
  it.each([
    [0.9, 1.2815515655],
    [0.95, 1.644853627],
    [0.975, 1.9599639845],
    [0.99, 2.326347874],
    [0.995, 2.5758293035],
  ])('at %s is %s to 9 decimals', (p, printed) => {
    expect(Math.abs(normalQuantile(p) - printed)).toBeLessThan(1e-9);
    expect(normalQuantile(1 - p)).toBeCloseTo(-printed, 9);
  });
});
