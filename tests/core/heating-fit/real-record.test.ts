import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { fitHeatingCurve } from '../../../src/core/heating-fit/fit-heating-curve.ts';

/** A real heater record (tests/reference/traces/README.md), channel T1, 100 to 900 s: a curve nobody simulated. */
function record() {
  const text = readFileSync(new URL('../../reference/traces/heater-step.csv', import.meta.url), 'utf8');
  const rows = text
    .trim()
    .split('\n')
    .slice(1)
    .map((row) => row.split(',').map(Number))
    .filter(([, timeS]) => timeS! >= 100 && timeS! <= 900);
  return {
    timesS: Float64Array.from(rows, ([, timeS]) => timeS!),
    valuesC: Float64Array.from(rows, ([, , , t1C]) => t1C!),
  };
}

it('meets scipy 1.17 curve_fit on a real heater record: plateau 54.989 °C, time constant 148.21 s, departure 23.58 s', () => {
  const fit = fitHeatingCurve(record(), { startC: 21.54 })!;
  // The fit works on 64 means of the 801 readings: it may differ by a third of scipy's own standard deviations.
  expect(Math.abs(fit.plateauC - 54.98946783)).toBeLessThan(0.0167 / 3);
  expect(Math.abs(fit.timeConstantS - 148.21118035)).toBeLessThan(0.6499 / 3);
  expect(Math.abs(fit.departsS - 23.578078920484458)).toBeLessThan(0.3);
  expect(fit.residualSdC).toBeCloseTo(0.2588, 3);
  expect(fit.residuals.lag1Autocorrelation).toBeCloseTo(0.851, 2);
  // scipy's white-noise SDs 0.01671 °C and 0.6499 s, widened by √((1 + ρ)/(1 − ρ)) = 3.52 for ρ 0.851.
  const widened = Math.sqrt((1 + 0.8509921) / (1 - 0.8509921));
  expect(Math.sqrt(fit.covariance[0]![0]!) / (0.01671162 * widened)).toBeCloseTo(1, 1);
  expect(Math.sqrt(fit.covariance[1]![1]!) / (0.64985928 * widened)).toBeCloseTo(1, 1);
});
