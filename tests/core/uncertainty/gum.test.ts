import { describe, expect, it } from 'vitest';
import { combinedStandardUncertaintyS } from '../../../src/core/uncertainty/combined-standard-uncertainty.ts';
import { coverageFactor } from '../../../src/core/uncertainty/coverage-factor.ts';
import { effectiveDegreesOfFreedom } from '../../../src/core/uncertainty/effective-degrees-of-freedom.ts';
import { expandedUncertainty } from '../../../src/core/uncertainty/expanded-uncertainty.ts';
import { limitPart, secondsAtCrossing } from '../../../src/core/uncertainty/limit-part.ts';
import { monteCarloInterval } from '../../../src/core/uncertainty/monte-carlo-interval.ts';
import type { PartShape, UncertaintyPart } from '../../../src/core/uncertainty/UncertaintyPart.ts';
import { example } from '../statistics/published.ts';

const part = (
  u: number,
  degreesOfFreedom = Number.POSITIVE_INFINITY,
  shape: PartShape = 'normal',
): UncertaintyPart => ({
  code: 'other',
  shape,
  standardUncertaintyS: u,
  degreesOfFreedom,
});

describe('GUM H.1, end-gauge calibration (nanometres in place of seconds)', () => {
  // Inputs of H.1 before rounding, as the annex states them.
  const length = 50.000623e6;
  const d1 = part(13 / Math.sqrt(5), 24);
  const d2 = part(10 / 2.57, 5);
  const d3 = part(20 / 3, 8);
  const difference = part(
    combinedStandardUncertaintyS([d1, d2, d3]),
    effectiveDegreesOfFreedom([d1, d2, d3]),
  );
  const parts = [
    part(75 / 3, 18),
    difference,
    part((length * 0.1 * 1e-6) / Math.sqrt(3), 50),
    part((length * 11.5e-6 * 0.05) / Math.sqrt(3), 2),
  ];
  const { published } = example('gum-h1-end-gauge');

  it('comparison: u 9.7 nm with 25.6 degrees of freedom', () => {
    expect(difference.standardUncertaintyS).toBeCloseTo(9.7, 1);
    expect(difference.degreesOfFreedom).toBeCloseTo(25.6, 1);
  });

  it('combined 32 nm (1002 nm²), 16.7 effective degrees of freedom, k 2.92, expanded 93 nm at 99 %', () => {
    const u = combinedStandardUncertaintyS(parts);
    const degreesOfFreedom = effectiveDegreesOfFreedom(parts);
    expect(Math.abs(u ** 2 - published.uc2_nm2)).toBeLessThan(0.6);
    expect(Math.round(u)).toBe(published.uc_nm);
    expect(degreesOfFreedom).toBeCloseTo(published.veff, 1);
    expect(coverageFactor(0.99, degreesOfFreedom)).toBeCloseTo(published.t_99, 2);
    // The annex multiplies the rounded 32 nm; unrounded it is 92.5 nm.
    expect(Math.round(coverageFactor(0.99, degreesOfFreedom) * Math.round(u))).toBe(published.U99_nm);
    expect(expandedUncertainty(parts, { probability: 0.99 }).method).toBe('student');
  });
});

describe('GUM G.4.1, product of three (from memory, recomputation agrees)', () => {
  it('combined 1.03 %, 19.0 degrees of freedom, k 2.09', () => {
    const { inputs, published } = example('gum-g41-product-of-three');
    const parts = inputs.relative_u_percent.map((u: number, index: number) => part(u, inputs.n[index] - 1));
    expect(combinedStandardUncertaintyS(parts)).toBeCloseTo(published.uc_percent, 2);
    // 18.9987 in full; GUM prints 19.0 and uses 19.
    expect(effectiveDegreesOfFreedom(parts)).toBeCloseTo(published.veff, 1);
    expect(coverageFactor(0.95, 19)).toBeCloseTo(published.t_95, 2);
  });
});

/**
 * Distribution of a sum of rectangular values on ±aᵢ, closed form by inclusion and exclusion:
 * F(x) = Σ over signs of (Π signs)·(x + Σ sᵢaᵢ)₊ⁿ ÷ (n!·Π 2aᵢ).
 */
function sumOfRectangularCdf(x: number, limits: readonly number[]): number {
  const n = limits.length;
  let total = 0;
  for (let mask = 0; mask < 2 ** n; mask += 1) {
    const signs = limits.map((_, index) => (mask & (1 << index) ? 1 : -1));
    const reach = x + limits.reduce((sum, limit, index) => sum + limit * (signs[index] ?? 0), 0);
    const sign = signs.reduce<number>((product, one) => product * one, 1);
    if (reach > 0) total += sign * reach ** n;
  }
  const factorial = limits.reduce((product, _, index) => product * (index + 1), 1);
  return total / (factorial * limits.reduce((product, limit) => product * 2 * limit, 1));
}

describe('Monte Carlo (JCGM 101)', () => {
  it('9.2.2: four normal parts of 1 give ±3.92', () => {
    const { halfWidthS } = monteCarloInterval([part(1), part(1), part(1), part(1)], { draws: 400_000 });
    expect(Math.abs(halfWidthS - 3.92)).toBeLessThan(0.02);
  });

  it('9.2.3: four rectangular parts of 1 give ±2√3·(2 − (3/5)^¼) = ±3.88', () => {
    const four = [0, 1, 2, 3].map(() => part(1, Number.POSITIVE_INFINITY, 'rectangular'));
    const exact = 2 * Math.sqrt(3) * (2 - 0.6 ** 0.25);
    expect(exact).toBeCloseTo(3.88, 2);
    expect(Math.abs(monteCarloInterval(four, { draws: 400_000 }).halfWidthS - exact)).toBeLessThan(0.02);
  });

  it('9.2.4: three rectangular parts of 1 and one of 10: ±17.0, where k = 1.96 would say ±19.9', () => {
    const parts = [1, 1, 1, 10].map((u) => part(u, Number.POSITIVE_INFINITY, 'rectangular'));
    const result = expandedUncertainty(parts);
    expect(result.method).toBe('monte-carlo');
    expect(Math.abs(result.expandedUncertaintyS - 17)).toBeLessThan(0.05);
    const limits = parts.map((one) => one.standardUncertaintyS * Math.sqrt(3));
    const coverage = 2 * sumOfRectangularCdf(result.expandedUncertaintyS, limits) - 1;
    // Four binomial standard errors of 0.95 over 100,000 draws.
    expect(Math.abs(coverage - 0.95)).toBeLessThan(0.0028);
    expect(Math.abs(sumOfRectangularCdf(result.upperS, limits) - 0.95)).toBeLessThan(0.0028);
    expect(1.96 * result.standardUncertaintyS).toBeGreaterThan(19.8);
  });

  it.each([1, 2, 4, 30])(
    'a Student part with %i degrees of freedom keeps its t quantile',
    (degreesOfFreedom) => {
      const { halfWidthS } = monteCarloInterval([part(1, degreesOfFreedom, 'student')], { draws: 400_000 });
      // NIST/SEMATECH table 1.3.6.7.2, column 0.975.
      const printed: Record<number, number> = { 1: 12.706, 2: 4.303, 4: 2.776, 30: 2.042 };
      expect(Math.abs(halfWidthS / (printed[degreesOfFreedom] ?? 0) - 1)).toBeLessThan(0.02);
    },
  );

  it('a triangular part of u = 1 holds 95 % within ±√6·(1 − √0.05)', () => {
    const { halfWidthS } = monteCarloInterval([part(1, Number.POSITIVE_INFINITY, 'triangular')], {
      draws: 400_000,
    });
    expect(Math.abs(halfWidthS - Math.sqrt(6) * (1 - Math.sqrt(0.05)))).toBeLessThan(0.01);
  });

  it('the same seed gives the same figure, another seed another', () => {
    const parts = [part(1), part(2, 3, 'student')];
    expect(monteCarloInterval(parts, { seed: 5 })).toEqual(monteCarloInterval(parts, { seed: 5 }));
    expect(monteCarloInterval(parts, { seed: 5 }).upperS).not.toBe(
      monteCarloInterval(parts, { seed: 6 }).upperS,
    );
  });
});

describe('limits of a probe as seconds', () => {
  // ±2.2 °C: ASTM E230, type K, new wire, standard tolerance, at 1.37 °C/s. a/√3 and 0.9 a are closed forms.
  it('±2.2 °C at 1.37 °C/s: ±1.6 s, standard 0.93 s, two-sided 1.5 s, one-sided 1.4 s', () => {
    const limitS = secondsAtCrossing(2.2, 1.37);
    const probe = limitPart('thermocouple-tolerance', limitS);
    const alone = expandedUncertainty([probe]);
    expect(limitS).toBeCloseTo(1.6, 1);
    expect(probe.standardUncertaintyS).toBeCloseTo(0.93, 2);
    expect(alone.expandedUncertaintyS).toBeCloseTo(0.95 * limitS, 10);
    expect(alone.upperS).toBeCloseTo(0.9 * limitS, 10);
    expect(alone.upperS).toBeCloseTo(1.4, 1);
  });

  it('refuses a slope of 0 and a negative limit', () => {
    expect(() => secondsAtCrossing(2.2, 0)).toThrow(expect.objectContaining({ code: 'option-out-of-range' }));
    expect(() => limitPart('clock', -1)).toThrow(expect.objectContaining({ code: 'option-out-of-range' }));
  });
});
