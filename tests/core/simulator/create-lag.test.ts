import { describe, expect, it } from 'vitest';
import { createLag } from '../../../src/core/simulator/create-lag.ts';

// Closed forms of a first-order lag: step 1 − exp(−t/τ), ramp trails by τ·slope.
describe('createLag', () => {
  it('after a step reaches 63.212 % at one time constant', () => {
    const lag = createLag(2, 0);
    // The input is taken as changing evenly over the step it changes in, so the step is kept short: 1e-6 s.
    lag.step(1e-6, 100);
    for (let step = 0; step < 200; step += 1) lag.step(0.01, 100);
    expect(lag.valueC).toBeCloseTo(100 * (1 - Math.exp(-1)), 3);
  });

  it('trails a ramp of 1.37 °C/s by 0.411 °C with a time constant of 0.3 s', () => {
    const lag = createLag(0.3, 0);
    for (let step = 1; step <= 1000; step += 1) lag.step(0.01, 0.0137 * step);
    expect(13.7 - lag.valueC).toBeCloseTo(0.411, 9);
  });

  it('without a time constant is the input itself', () => {
    expect(createLag(0, 5).step(0.01, 80)).toBe(80);
  });
});
