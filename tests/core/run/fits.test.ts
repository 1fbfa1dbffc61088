import { describe, expect, it } from 'vitest';
import { findRipple } from '../../../src/core/run/find-ripple.ts';
import { fitCrossing } from '../../../src/core/run/fit-crossing.ts';
import { fitFirstOrder } from '../../../src/core/run/fit-first-order.ts';
import { hingeLevelC, hingeSearch } from '../../../src/core/run/hinge.ts';
import { solveThree } from '../../../src/core/run/solve-three.ts';
import { createNoise, EXAMPLE, heatingAt, trueSoak } from './make-heating.ts';

// Expected values by algebra: curves and sines are made from their own closed forms.

const times = (fromS: number, toS: number, rateHz: number): Float64Array =>
  Float64Array.from({ length: Math.round((toS - fromS) * rateHz) }, (_, i) => fromS + i / rateHz);

describe('curves without noise are met exactly', () => {
  const soakS = trueSoak(EXAMPLE, 176.67);

  it.each([10, 1])(
    'crossing of the first-order curve at %i Hz within 1 µs, slope and 1/τ within 1e-5',
    (hz) => {
      const timesS = times(soakS - 9.9, soakS + 9.9, hz);
      const valuesC = timesS.map((t) => heatingAt(EXAMPLE, t));
      const { curve } = fitCrossing({ timesS, valuesC }, 176.67, 0, soakS + 0.3)!;
      expect(Math.abs(curve.tc - soakS)).toBeLessThan(1e-6);
      expect(Math.abs(curve.s - (232.2 - 176.67) / 40.5)).toBeLessThan(1e-5);
      expect(Math.abs(curve.k - 1 / 40.5)).toBeLessThan(1e-5);
    },
  );

  it.each([3, 40.5, 400])('first-order fit finds τ %f s, plateau and departure', (timeConstantS) => {
    const heating = { ...EXAMPLE, timeConstantS, delayS: 2 };
    const timesS = times(3, 160, 10);
    const fit = fitFirstOrder({ timesS, valuesC: timesS.map((t) => heatingAt(heating, t)) }, 24)!;
    expect(Math.abs(fit.timeConstantS / timeConstantS - 1)).toBeLessThan(1e-4);
    expect(Math.abs(fit.plateauC - 232.2)).toBeLessThan(0.02);
    expect(Math.abs(fit.departsS - 2)).toBeLessThan(0.01);
  });

  it('hinge of 5 °C/s less 0.06 °C/s² from 15.3 s on: its squares are least there and near 0', () => {
    const timesS = times(0, 20, 10);
    const level = (t: number): number => {
      const x = Math.max(0, t - 15.3);
      return 24 + 5 * x - 0.06 * x * x;
    };
    const at = hingeSearch({ timesS, valuesC: timesS.map(level) }, null);
    const best = at(15.3)!;
    expect(best.cost).toBeLessThan(1e-8);
    expect(at(15.1)!.cost).toBeGreaterThan(best.cost + 0.01);
    expect(at(15.5)!.cost).toBeGreaterThan(best.cost + 0.01);
    expect(Math.abs(hingeLevelC(best, 19) - level(19))).toBeLessThan(1e-5);
  });
});

it('solves 4x + y = 1, x + 3y + z = 2, y + 2z = 3 (x 2/9, y 1/9, z 13/9); refuses a singular matrix', () => {
  const solved = solveThree({ aa: 4, ab: 1, ac: 0, bb: 3, bc: 1, cc: 2 }, [1, 2, 3])!;
  [2 / 9, 1 / 9, 13 / 9].forEach((value, i) => {
    expect(solved[i]).toBeCloseTo(value, 12);
  });
  expect(solveThree({ aa: 1, ab: 2, ac: 3, bb: 4, bc: 6, cc: 9 }, [1, 2, 3])).toBeNull();
});

describe('ripple in residuals', () => {
  const timesS = times(0, 20, 10);
  const noisy = (seed: number, radPerS: number, amplitudeC: number): Float64Array => {
    const noise = createNoise(seed);
    return timesS.map((t) => amplitudeC * Math.sin(radPerS * t + 1) + 0.25 * noise.normal());
  };

  it.each([0.3, 0.7, 1.8, 3.1])(
    '0.5 °C at %f Hz under 0.25 °C of noise: frequency within 2 %, amplitude within 0.1 °C',
    (hz) => {
      const ripple = findRipple(timesS, noisy(3, 2 * Math.PI * hz, 0.5))!;
      expect(Math.abs(ripple.radPerS / (2 * Math.PI * hz) - 1)).toBeLessThan(0.02);
      expect(Math.abs(ripple.amplitudeC - 0.5)).toBeLessThan(0.1);
    },
  );

  it('white noise alone has none in 500 seeded records', () => {
    for (let seed = 1; seed <= 500; seed++) expect(findRipple(timesS, noisy(seed, 1, 0))).toBeNull();
  });
});
