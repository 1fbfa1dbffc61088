import { describe, expect, it } from 'vitest';
import { timeToTarget } from '../../../src/core/run-estimate/time-to-target.ts';

/** First-order curve of the domain's example: 24 °C, platens 232 °C, τ 40.5 s; delay 3 s. */
const first = (timeS: number) => (timeS < 3 ? 24 : 232 - 208 * Math.exp(-(timeS - 3) / 40.5));
const FIRST_CROSSING_S = 3 + 40.5 * Math.log(208 / (232 - 176.667));

/**
 * Mid-plane of a slab heated from both faces held at 232 °C: Fourier series of transient conduction in a plane wall,
 * θ = Σ 4/((2n+1)π)·(−1)^n·exp(−(2n+1)²π²Fo/4) (any heat-transfer handbook; here from Carslaw and Jaeger, from memory).
 */
function slab(timeS: number): number {
  if (timeS <= 0) return 24;
  const fourier = timeS / 100;
  let theta = 0;
  for (let n = 0; n < 60; n++) {
    const odd = 2 * n + 1;
    theta +=
      (4 / (odd * Math.PI)) * (n % 2 === 0 ? 1 : -1) * Math.exp((-odd * odd * Math.PI ** 2 * fourier) / 4);
  }
  return 232 - 208 * theta;
}

function crossingOf(curve: (timeS: number) => number): number {
  let [low, high] = [0, 400];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (curve(middle) < 176.667) low = middle;
    else high = middle;
  }
  return low;
}

/** Reproducible noise, roughly normal, standard deviation 1. */
function noise(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  return () => Array.from({ length: 12 }, uniform).reduce((sum, u) => sum + u, -6);
}

const pointsOf = (curve: (timeS: number) => number, untilS: number, sdC = 0, seed = 1) => {
  const n = noise(seed);
  return Array.from({ length: Math.floor(untilS * 4) + 1 }, (_, i) => ({
    timeS: i / 4,
    temperatureC: curve(i / 4) + sdC * n(),
  }));
};

describe('timeToTarget', () => {
  it.each([
    ['first order', { curve: first }, FIRST_CROSSING_S],
    ['slab between two hot faces', { curve: slab }, crossingOf(slab)],
  ] as const)(
    '%s: from half-way on within the larger of a tenth of the rest and 0.5 s, noise 0.15 °C',
    (_name, { curve }, crossingS) => {
      for (let seed = 1; seed <= 20; seed++) {
        for (const share of [0.5, 0.6, 0.75, 0.9, 0.97]) {
          const nowS = Math.floor(crossingS * share * 4) / 4;
          const estimate = timeToTarget(pointsOf(curve, nowS, 0.15, seed), 176.667, {
            fromS: 0,
            plateau: { expectedC: 230, standardUncertaintyC: 6 },
          });
          const restS = crossingS - nowS;
          expect(estimate.kind).toBe('estimate');
          if (estimate.kind !== 'estimate') continue;
          expect(Math.abs(estimate.restS - restS), `seed ${seed}, share ${share}`).toBeLessThanOrEqual(
            Math.max(0.1 * restS, 0.5),
          );
        }
      }
    },
  );

  it('holds the true rest inside its range in at least 90 of 100 noisy trials at half-way', () => {
    let inside = 0;
    for (let seed = 1; seed <= 100; seed++) {
      const estimate = timeToTarget(pointsOf(first, 28, 0.3, seed), 176.667, {
        fromS: 0,
        plateau: { expectedC: 230, standardUncertaintyC: 6 },
      });
      const restS = FIRST_CROSSING_S - 28;
      if (estimate.kind === 'estimate' && estimate.earliestS <= restS && (estimate.latestS ?? 1e9) >= restS)
        inside++;
    }
    expect(inside).toBeGreaterThanOrEqual(90);
  });

  it('says the target may never be reached when the curve levels out below it', () => {
    const low = (timeS: number) => 170 - 146 * Math.exp(-timeS / 30);
    expect(timeToTarget(pointsOf(low, 120), 176.667, { fromS: 0 })).toEqual({
      kind: 'none',
      why: 'levels-out-below',
    });
  });

  it('says too early before 12 readings or 4 s, and not rising on a falling trace', () => {
    expect(timeToTarget([], 176.667, { fromS: 0 })).toEqual({ kind: 'none', why: 'too-early' });
    expect(timeToTarget(pointsOf(first, 2), 176.667, { fromS: 0 })).toEqual({
      kind: 'none',
      why: 'too-early',
    });
    expect(
      timeToTarget(
        pointsOf((s) => 150 - s, 30),
        176.667,
        { fromS: 0 },
      ),
    ).toEqual({ kind: 'none', why: 'not-rising' });
  });

  it('looks at nothing but the readings given (causal) and leaves them unchanged', () => {
    const points = pointsOf(first, 40).map((p) => Object.freeze(p));
    const estimate = timeToTarget(Object.freeze(points), 176.667, { fromS: 0 });
    expect(estimate.kind).toBe('estimate');
  });
});
