import { describe, expect, it } from 'vitest';
import type { CureFacts } from '../../../src/core/cure/CureFacts.ts';
import { checkCureFacts } from '../../../src/core/cure/check-cure-facts.ts';
import { arrhenius, GAS_CONSTANT } from '../../../src/core/cure/cure-rate.ts';
import { equivalentTimeS } from '../../../src/core/cure/equivalent-time-s.ts';

/** Invented figures; no adhesive's. */
const facts: CureFacts = { activationEnergyKjPerMol: 80, referenceC: 177, rangeC: { from: 100, to: 220 } };

function trace(toS: number, stepS: number, temperatureC: (timeS: number) => number) {
  const timesS = Array.from({ length: Math.round(toS / stepS) + 1 }, (_, i) => i * stepS);
  return [timesS, timesS.map(temperatureC)] as const;
}

/** Exponential integral E1(x), continued fraction (Abramowitz and Stegun 5.1.22), for x > 1. */
function e1(x: number): number {
  let tail = 0;
  for (let n = 200; n >= 1; n -= 1) tail = n / (1 + n / (x + tail));
  return Math.exp(-x) / (x + tail);
}

describe('equivalent time at the reference', () => {
  it('is the time itself at the reference temperature: 120 s', () => {
    expect(equivalentTimeS(...trace(120, 0.1, () => 177), facts, 0.1).equivalentS).toBeCloseTo(120, 9);
  });

  it('at a constant 190 °C is time · exp(−Ea/R·(1/463.15 − 1/450.15)), closed form', () => {
    const expected = 120 * Math.exp((-80000 / 8.31446261815324) * (1 / 463.15 - 1 / 450.15));
    expect(equivalentTimeS(...trace(120, 0.1, () => 190), facts, 0.1).equivalentS).toBeCloseTo(expected, 8);
  });

  it.each([0.1, 1, 3])(
    'of a linear ramp from 120 to 200 °C, read every %f s, meets the closed form by the exponential integral to 1e-6',
    (stepS) => {
      // ∫ exp(−Q/T) dT = T·exp(−Q/T) − Q·E1(Q/T); E1(12) = 4.751e-7 (A&S table 5.1) checks the helper.
      expect(e1(12)).toBeCloseTo(4.7511e-7, 11);
      const q = 80000 / GAS_CONSTANT;
      const integral = (t: number) => t * Math.exp(-q / t) - q * e1(q / t);
      const perS = 80 / 120;
      const expected = (Math.exp(q / 450.15) * (integral(473.15) - integral(393.15))) / perS;
      const found = equivalentTimeS(...trace(120, stepS, (t) => 120 + perS * t), facts, stepS);
      expect(Math.abs(found.equivalentS / expected - 1)).toBeLessThan(1e-6);
    },
  );

  it('gives 75.3008 h for four stays of 12 h at 10, 20, 30 and 40 °C, Q 5000 K, reference 20 °C (form of ASTM C1074; case computed, not published, formula from memory)', () => {
    const hours = [10, 20, 30, 40].reduce((sum, c) => sum + 12 * arrhenius(5000, c, 20), 0);
    expect(hours).toBeCloseTo(75.3007569570196, 10);
  });

  it('meets the acceleration factors 133 and 17597 between 25 and 125 °C at 0.5 and 1.0 eV (NIST/SEMATECH e-Handbook 8.1.5.1, from memory, not confirmed) within 0.4 %', () => {
    for (const [ev, expected] of [
      [0.5, 133],
      [1, 17597],
    ] as const)
      expect(Math.abs(arrhenius(11605 * ev, 125, 25) / expected - 1)).toBeLessThan(0.004);
  });

  it('below the data sheet’s range counts nothing and says for how long', () => {
    const found = equivalentTimeS(...trace(60, 1, () => 90), facts, 1);
    expect(found).toMatchObject({ equivalentS: 0, belowRangeS: 60, aboveRangeS: 0 });
  });

  it('above the range counts at the rate of its end, never more', () => {
    const at = (c: number) => equivalentTimeS(...trace(60, 1, () => c), facts, 1);
    expect(at(260).equivalentS).toBeCloseTo(at(220).equivalentS, 9);
    expect(at(260).aboveRangeS).toBe(60);
  });

  it('never bridges a gap of 20 s', () => {
    const [timesS, valuesC] = trace(60, 1, () => 177);
    const kept = timesS.map((t, i) => [t, valuesC[i]!] as const).filter(([t]) => t <= 20 || t >= 40);
    const found = equivalentTimeS(
      kept.map(([t]) => t),
      kept.map(([, c]) => c),
      facts,
      1,
    );
    expect(found.equivalentS).toBeCloseTo(40, 9);
    expect(found.missingS).toBe(20);
  });
});

describe('facts of a cure', () => {
  it.each([
    ['an energy in J/mol', { ...facts, activationEnergyKjPerMol: 80000 }],
    ['a reference outside the range', { ...facts, referenceC: 250 }],
    ['a range upside down', { ...facts, rangeC: { from: 220, to: 100 } }],
    ['no number', { ...facts, activationEnergyKjPerMol: Number.NaN }],
  ])('refuses %s', (_, wrong) => {
    expect(() => checkCureFacts(wrong)).toThrow(expect.objectContaining({ code: 'cure-facts-wrong' }));
  });
});
