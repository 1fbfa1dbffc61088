import { describe, expect, it } from 'vitest';
import { createRandom, createRandomFromState } from '../../../src/core/simulator/create-random.ts';

describe('createRandom', () => {
  it('is xoshiro128**: state 1, 2, 3, 4 gives 11520, 0, 5927040, 70819200 first', () => {
    // From memory: the first outputs listed with public ports of Blackman and Vigna's reference code.
    const random = createRandomFromState([1, 2, 3, 4]);
    expect([random.next(), random.next(), random.next(), random.next()]).toEqual([
      11520, 0, 5927040, 70819200,
    ]);
  });

  it('gives the same numbers for the same seed and others for the next', () => {
    const draw = (seed: number) => Array.from({ length: 5 }, createRandom(seed).uniform);
    expect(draw(7)).toEqual(draw(7));
    expect(draw(7)).not.toEqual(draw(8));
  });

  it('uniform: mean 1/2 and variance 1/12 within four standard errors of 200,000 draws', () => {
    const random = createRandom(11);
    const count = 200_000;
    const values = Array.from({ length: count }, () => random.uniform());
    const mean = values.reduce((a, b) => a + b) / count;
    const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / count;
    expect(Math.min(...values.slice(0, 1000))).toBeGreaterThanOrEqual(0);
    expect(Math.abs(mean - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / count));
    // Variance of (u − 1/2)² is 1/180.
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(4 * Math.sqrt(1 / 180 / count));
  });

  it('normal: mean 0, variance 1, 4.55 % beyond two, within four standard errors of 200,000 draws', () => {
    const random = createRandom(12);
    const count = 200_000;
    const values = Array.from({ length: count }, () => random.normal());
    const mean = values.reduce((a, b) => a + b) / count;
    const variance = values.reduce((sum, value) => sum + value ** 2, 0) / count;
    const beyond = values.filter((value) => Math.abs(value) > 2).length / count;
    expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(count));
    expect(Math.abs(variance - 1)).toBeLessThan(4 * Math.sqrt(2 / count));
    expect(Math.abs(beyond - 0.0455)).toBeLessThan(4 * Math.sqrt((0.0455 * 0.9545) / count));
  });
});
