import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fitHeatingCurve } from '../../../src/core/heating-fit/fit-heating-curve.ts';
import { lag1Autocorrelation } from '../../../src/core/heating-fit/lag-1-autocorrelation.ts';
import { runsZ } from '../../../src/core/heating-fit/runs-z.ts';
import { createRandom } from '../../../src/core/simulator/create-random.ts';

/** The trade's example: 24 °C, platens 232.2 °C, τ 40.5 s, here with a delay of 2 s. */
const TRUTH = { startC: 24, plateauC: 232.2, timeConstantS: 40.5, departsS: 2 };

function trace(
  noiseC: number,
  seed: number,
  { lagS = 0, fromS = 4, toS = 120, spikes = 0, correlation = 0 } = {},
) {
  const random = createRandom(seed);
  const { startC, plateauC, timeConstantS: tau, departsS } = TRUTH;
  const timesS: number[] = [];
  const valuesC: number[] = [];
  let noise = 0;
  for (let step = 0; ; step += 1) {
    const timeS = fromS + step * 0.1;
    if (timeS > toS) break;
    const t = timeS - departsS;
    const decay = Math.exp(-t / tau);
    // Response of a second first-order lag to the curve (closed form).
    const lagged = lagS === 0 ? decay : (tau * decay - lagS * Math.exp(-t / lagS)) / (tau - lagS);
    const spike = random.uniform() < spikes ? (random.uniform() < 0.5 ? 30 : -30) : 0;
    noise = correlation * noise + Math.sqrt(1 - correlation ** 2) * noiseC * random.normal();
    timesS.push(timeS);
    valuesC.push(plateauC - (plateauC - startC) * lagged + noise + spike);
  }
  return { timesS: Float64Array.from(timesS), valuesC: Float64Array.from(valuesC) };
}

describe('fitHeatingCurve', () => {
  it('finds the closed-form curve without noise within 0.01 °C, 0.01 s and 0.02 s', () => {
    const fit = fitHeatingCurve(trace(0, 1), { startC: 24 })!;
    expect(Math.abs(fit.plateauC - TRUTH.plateauC)).toBeLessThan(0.01);
    expect(Math.abs(fit.timeConstantS - TRUTH.timeConstantS)).toBeLessThan(0.01);
    expect(Math.abs(fit.departsS - TRUTH.departsS)).toBeLessThan(0.02);
  });

  it.each([
    [0, 0.93],
    [0.5, 0.93],
    [0.8, 0.92],
  ])(
    'noise with correlation %f from reading to reading: 95 % intervals of plateau, time constant and departure hold the truth in %f to 0.97 of 1,000 seeded traces',
    (correlation, least) => {
      const runs = 1000;
      const inside = [0, 0, 0];
      for (let seed = 1; seed <= runs; seed += 1) {
        const fit = fitHeatingCurve(trace(0.3, seed, { correlation, toS: 82 }), { startC: 24 })!;
        const off = [
          fit.plateauC - TRUTH.plateauC,
          fit.timeConstantS - TRUTH.timeConstantS,
          fit.departsS - TRUTH.departsS,
        ];
        off.forEach((value, at) => {
          if (Math.abs(value) <= 1.96 * Math.sqrt(fit.covariance[at]![at]!)) inside[at]! += 1;
        });
      }
      for (const count of inside) {
        expect(count / runs).toBeGreaterThanOrEqual(least);
        expect(count / runs).toBeLessThanOrEqual(0.97);
      }
    },
  );

  it('leaves out 1 % spikes of ±30 °C and stays within 0.3 °C and 0.3 s', () => {
    const fit = fitHeatingCurve(trace(0.25, 3, { spikes: 0.01 }), { startC: 24 })!;
    expect(fit.spikes).toBeGreaterThan(3);
    expect(Math.abs(fit.plateauC - TRUTH.plateauC)).toBeLessThan(0.3);
    expect(Math.abs(fit.timeConstantS - TRUTH.timeConstantS)).toBeLessThan(0.3);
  });

  it('says that the model fits where it does, and that it is wrong under an added lag of 8 s', () => {
    expect(fitHeatingCurve(trace(0.25, 5), { startC: 24 })!.residuals.verdict).toBe('fits');
    const lagged = fitHeatingCurve(trace(0.25, 5, { lagS: 8, fromS: 2 }), { startC: 24 })!;
    expect(lagged.residuals.verdict).toBe('wrong-model');
    expect(lagged.residuals.runsZ).toBeLessThan(-10);
  });

  it('gives null for a falling trace, a straight line and seven readings', () => {
    const { timesS, valuesC } = trace(0, 1);
    expect(fitHeatingCurve({ timesS, valuesC: valuesC.map((c) => 300 - c) }, { startC: 24 })).toBeNull();
    expect(fitHeatingCurve({ timesS, valuesC: timesS.map((t) => 24 + t) }, { startC: 24 })).toBeNull();
    expect(
      fitHeatingCurve({ timesS: timesS.subarray(0, 7), valuesC: valuesC.subarray(0, 7) }, { startC: 24 }),
    ).toBeNull();
  });
});

describe('residual statistics', () => {
  const folder = new URL('../../reference/statistics/strd/', import.meta.url);
  const column = (name: string) =>
    readFileSync(new URL(`${name}.csv`, folder), 'utf8')
      .trim()
      .split('\n')
      .slice(1)
      .map(Number);
  const certified = JSON.parse(readFileSync(new URL('certified.json', folder), 'utf8'));

  it.each([
    ['Michelso', 0.535199668621283],
    ['Mavro', 0.937989183438248],
    ['Lottery', -0.120948622967393],
    ['Lew', -0.307304800605679],
  ])('lag-1 autocorrelation of %s is %f (StRD, certified) to 11 digits', (name, expected) => {
    expect(certified).toBeDefined();
    expect(Math.abs(lag1Autocorrelation(column(name)) - expected)).toBeLessThan(1e-11);
  });

  it('runs test about the median of LEW is 2.6938 (NIST/SEMATECH e-Handbook 1.3.5.13, from memory)', () => {
    const values = column('Lew');
    const sorted = [...values].sort((a, b) => a - b);
    expect(runsZ(values, (sorted[99]! + sorted[100]!) / 2)).toBeCloseTo(2.6938, 4);
  });
});
