import { describe, expect, it } from 'vitest';
import { temperatureRange } from '../../../src/core/figure/temperature-range.ts';

const heating = Array.from({ length: 2000 }, (_, index) => 24 + (208 * index) / 1999);

describe('range of a temperature axis', () => {
  it('holds every reading and the target', () => {
    const { lowC, highC, below, above } = temperatureRange(heating, 250);
    expect(lowC).toBeLessThan(24);
    expect(highC).toBeGreaterThan(250);
    expect([below, above]).toEqual([null, null]);
  });

  it('leaves ten full-scale readings of 1372 °C outside, and tells them', () => {
    const { highC, above } = temperatureRange([...heating, ...Array<number>(10).fill(1372)], 176.7);
    expect(highC).toBeLessThan(260);
    expect(above).toBe(1372);
  });

  it('keeps what a probe on a platen reads: 30 °C above the rest is no spike', () => {
    expect(temperatureRange([...heating, 262], 176.7)).toMatchObject({ above: null });
  });

  it('of no reading stands round the target', () => {
    const { lowC, highC } = temperatureRange([], 176.7);
    expect(lowC).toBeLessThan(176.7);
    expect(highC).toBeGreaterThan(176.7);
  });
});
