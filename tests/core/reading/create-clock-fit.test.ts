import { describe, expect, it } from 'vitest';
import { createClockFit } from '../../../src/core/reading/create-clock-fit.ts';
import { seededNormal } from './seeded-normal.ts';

/** Reader clock fast by `ppm`; transfer 1 ms plus an exponential delay, now and then a stall of 300 ms. */
function listen(options: { ppm: number; seconds: number; hz: number; seed: number; breakAtS?: number }) {
  const normal = seededNormal(options.seed);
  const fit = createClockFit();
  for (let i = 0; i < options.seconds * options.hz; i += 1) {
    const hostS = i / options.hz;
    if (options.breakAtS === hostS) fit.breakHere();
    const exponentialMs = (normal() ** 2 + normal() ** 2) / 2;
    const stallMs = i % 97 === 0 ? 300 : 0;
    fit.add(
      hostS * 1e6 * (1 + options.ppm / 1e6),
      Math.round(hostS * 1e6 + 1000 + 1000 * (3 * exponentialMs + stallMs)),
    );
  }
  return fit.comparison;
}

describe('createClockFit', () => {
  it('finds −250, 0, 40 and 5,000 ppm within three standard uncertainties at 10 Hz over 10 min', () => {
    for (const ppm of [-250, 0, 40, 5000])
      for (const seed of [1, 2, 3, 4, 5]) {
        const found = listen({ ppm, seconds: 600, hz: 10, seed });
        const uncertaintyPpm = found.standardUncertaintyPpm as number;
        expect(Math.abs((found.driftPpm as number) - ppm)).toBeLessThan(3 * uncertaintyPpm);
        expect(uncertaintyPpm).toBeLessThan(1);
      }
  });

  it('claims less from a short recording: 20 s', () => {
    const found = listen({ ppm: 100, seconds: 20, hz: 10, seed: 3 });
    expect(Math.abs((found.driftPpm as number) - 100)).toBeLessThan(
      4 * (found.standardUncertaintyPpm as number),
    );
    expect(found.standardUncertaintyPpm).toBeGreaterThan(5);
  });

  it('says nothing under 5 s', () => {
    expect(listen({ ppm: 100, seconds: 4, hz: 10, seed: 1 })).toEqual({
      driftPpm: null,
      standardUncertaintyPpm: null,
      overS: 0,
    });
  });

  it('keeps the longest unbroken stretch, 200 s, when the clocks lose their relation', () => {
    for (const breakAtS of [100, 200]) {
      // The stretch that is still open at the end (at most 8 s here) is not counted.
      const { overS } = listen({ ppm: 100, seconds: 300, hz: 10, seed: 1, breakAtS });
      expect(overS).toBeGreaterThan(180);
      expect(overS).toBeLessThanOrEqual(200.1);
    }
  });

  it('takes no file with row numbers for arrivals as a clock', () => {
    const fit = createClockFit();
    for (let i = 0; i < 100; i += 1) fit.add(i * 1e6, i);
    expect(fit.comparison.driftPpm).toBeNull();
  });

  it('takes no arrivals made from the very same clock as a second clock', () => {
    const fit = createClockFit();
    for (let i = 0; i < 100; i += 1) fit.add(i * 1e6, i * 1e6);
    expect(fit.comparison.driftPpm).toBeNull();
  });

  it('gives the same answer however often it was asked before', () => {
    const answer = (askEvery: number) => {
      const fit = createClockFit();
      const normal = seededNormal(11);
      for (let i = 0; i < 3000; i += 1) {
        fit.add(i * 1e5, Math.round(i * 1e5 * 1.0002 + 1000 + 2000 * normal() ** 2));
        if (i % askEvery === 0) fit.comparison;
      }
      return fit.comparison;
    };
    expect(answer(1)).toEqual(answer(1e9));
  });

  it('reads a slow reader of one line in 30 s', () => {
    const fit = createClockFit();
    for (let i = 0; i < 500; i += 1) fit.add(i * 30e6 * 1.00005, i * 30e6 + 1000 + (i % 7) * 100);
    expect(fit.comparison.driftPpm).toBeCloseTo(50, 0);
  });
});
