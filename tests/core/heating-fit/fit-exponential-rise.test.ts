import { readFileSync } from 'node:fs';
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, it } from 'vitest';
import { fitExponentialRise } from '../../../src/core/heating-fit/fit-exponential-rise.ts';

/** NIST/ITL StRD, nonlinear regression, y = b1·(1 − exp(−b2·x)); certified to 11 digits. */
const folder = new URL('../../reference/strd/', import.meta.url);
const certified = JSON.parse(readFileSync(new URL('certified.json', folder), 'utf8'));
const SETS = ['Misra1a', 'BoxBOD'] as const;

function data(name: string): { x: Float64Array; y: Float64Array } {
  const rows = readFileSync(new URL(`${name}.csv`, folder), 'utf8')
    .trim()
    .split('\n')
    .slice(1);
  const column = (at: number) => Float64Array.from(rows.map((row) => Number(row.split(',')[at])));
  return { x: column(0), y: column(1) };
}

/** Digits in which two figures agree: −log10 of the relative difference (as StRD counts them). */
const digits = (came: number, expected: number): number =>
  -Math.log10(Math.abs(came - expected) / Math.abs(expected));

describe.each(SETS)('%s (StRD)', (name) => {
  const { x, y } = data(name);
  const set = certified[name];
  const { b1, b2 } = set.parameters;
  const through = { x: 0, y: 0 };

  it('is the right model: residual squares at the certified parameters to 10 digits', () => {
    const squares = x.reduce(
      (sum, at, i) => sum + (y[i]! - b1.certified * (1 - Math.exp(-b2.certified * at))) ** 2,
      0,
    );
    expect(digits(squares, set.residual_sum_of_squares)).toBeGreaterThan(9.5);
  });

  it.each(['start1', 'start2', 'own guess'] as const)(
    'gives the certified fit from %s to 9 digits',
    (start) => {
      const startRate = start === 'own guess' ? null : b2[start];
      const fit = fitExponentialRise(x, y, { through, startRate })!;
      expect(digits(fit.plateau, b1.certified)).toBeGreaterThan(9);
      expect(digits(fit.rate, b2.certified)).toBeGreaterThan(9);
      expect(digits(fit.squares, set.residual_sum_of_squares)).toBeGreaterThan(9);
      const sd = Math.sqrt(fit.squares / (x.length - 2));
      expect(digits(sd, set.residual_sd)).toBeGreaterThan(9);
      expect(digits(sd * Math.sqrt(fit.inverse[0]![0]!), b1.certified_sd)).toBeGreaterThan(8);
      expect(digits(sd * Math.sqrt(fit.inverse[2]![2]!), b2.certified_sd)).toBeGreaterThan(8);
    },
  );
});

describe('BoxBOD from start 1 (1, 1) defeats the plain Levenberg-Marquardt of ml-levenberg-marquardt', () => {
  const { x, y } = data('BoxBOD');
  const plain = (damping: number) =>
    levenbergMarquardt(
      { x: [...x], y: [...y] },
      ([b1 = 0, b2 = 0]: number[]) =>
        (at: number) =>
          b1 * (1 - Math.exp(-b2 * at)),
      { initialValues: [1, 1], damping, maxIterations: 1000, errorTolerance: 0, centralDifference: true },
    );

  it('with usual damping it breaks off: the first step leaves the range of numbers', () => {
    expect(() => plain(0.01)).toThrow(/not symmetric/);
  });

  it('with heavy damping it ends on a plateau (b1 149.5, b2 4.8), ten times the certified residual squares', () => {
    const [b1 = 0, b2 = 0] = plain(1e4).parameterValues;
    const squares = x.reduce((sum, at, i) => sum + (y[i]! - b1 * (1 - Math.exp(-b2 * at))) ** 2, 0);
    expect(b1).toBeCloseTo(149.5, 0);
    expect(squares).toBeGreaterThan(10 * certified.BoxBOD.residual_sum_of_squares);
  });
});
