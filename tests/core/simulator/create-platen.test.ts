import { describe, expect, it } from 'vitest';
import { createPlaten } from '../../../src/core/simulator/create-platen.ts';
import { NORTH } from '../../../src/core/simulator/demo-presses.ts';

const START = { temperatureC: 232.22, ambientC: 24, cyclePhase: 0.3 };

describe('createPlaten', () => {
  it('holds its set point within 0.5 °C on average when nothing is taken', () => {
    const platen = createPlaten(NORTH.lower, START);
    let sum = 0;
    for (let step = 0; step < 60_000; step += 1) {
      platen.step(0.01, 0);
      if (step >= 30_000) sum += platen.temperatureC;
    }
    expect(Math.abs(sum / 30_000 - 232.22)).toBeLessThan(0.5);
  });

  it('cycles: the heater goes on and off, once in each cycle of 4 s', () => {
    const platen = createPlaten(NORTH.lower, START);
    let switches = 0;
    let before = platen.heaterOn;
    for (let step = 0; step < 40_000; step += 1) {
      platen.step(0.01, 0);
      if (platen.heaterOn !== before) switches += 1;
      before = platen.heaterOn;
    }
    expect(switches).toBeGreaterThan(180);
    expect(switches).toBeLessThanOrEqual(202);
  });

  it('sags when a cold part takes heat and comes back: energy of 60 kJ in 20 s is seen as a dip of 2 to 5.45 °C', () => {
    // Without a controller 60 kJ out of 11 kJ/K would be 5.45 °C; the heater gives some of it back meanwhile.
    const platen = createPlaten(NORTH.lower, START);
    let lowestC = 300;
    for (let step = 0; step < 30_000; step += 1) {
      platen.step(0.01, step < 2000 ? 3000 : 0);
      lowestC = Math.min(lowestC, platen.temperatureC);
    }
    expect(232.22 - lowestC).toBeGreaterThan(2);
    expect(232.22 - lowestC).toBeLessThan(5.45);
    expect(Math.abs(platen.temperatureC - 232.22)).toBeLessThan(1.5);
  });

  it('cools with its heater at rest as a lump: time constant C / loss (closed form)', () => {
    const platen = createPlaten({ ...NORTH.lower, heaterW: 1e-9, gainPerC: 0 }, START);
    for (let step = 0; step < 100_000; step += 1) platen.step(0.01, 0);
    const { heatCapacityJPerK, lossWPerK } = NORTH.lower;
    const expectedC = 24 + (232.22 - 24) * Math.exp((-1000 * lossWPerK) / heatCapacityJPerK);
    expect(Math.abs(platen.temperatureC - expectedC)).toBeLessThan(0.01);
  });
});
