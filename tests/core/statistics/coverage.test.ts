import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../src/core/simulator/create-random.ts';
import { grubbs } from '../../../src/core/statistics/grubbs.ts';
import { meanInterval } from '../../../src/core/statistics/mean-interval.ts';
import { nextValueUpper } from '../../../src/core/statistics/next-value-upper.ts';
import { sampleMean } from '../../../src/core/statistics/sample-mean.ts';
import { sampleSd } from '../../../src/core/statistics/sample-sd.ts';
import { toleranceFactor } from '../../../src/core/statistics/tolerance-factor.ts';

const TRIALS = 40_000;
const MEAN_S = 53.5;
const SD_S = 0.8;
/** 95 % quantile of the standard normal distribution. */
const Z_95 = 1.6448536269514722;

/** Four binomial standard errors of a share p over the trials. */
const within = (p: number) => 4 * Math.sqrt((p * (1 - p)) / TRIALS);

describe(`coverage over ${TRIALS} seeded trials, within 4 binomial standard errors`, () => {
  it.each([2, 3, 5, 10])('n = %i: mean interval 95 %, next run 95 %, tolerance 95/95', (n) => {
    const random = createRandom(1000 + n);
    const k = toleranceFactor(n);
    const hits = { mean: 0, next: 0, tolerance: 0 };
    for (let trial = 0; trial < TRIALS; trial += 1) {
      const soakTimesS = Array.from({ length: n }, () => MEAN_S + SD_S * random.normal());
      const [low, high] = meanInterval(soakTimesS);
      if (low <= MEAN_S && MEAN_S <= high) hits.mean += 1;
      if (MEAN_S + SD_S * random.normal() <= nextValueUpper(soakTimesS)) hits.next += 1;
      if (sampleMean(soakTimesS) + k * sampleSd(soakTimesS) >= MEAN_S + Z_95 * SD_S) hits.tolerance += 1;
    }
    for (const share of Object.values(hits)) {
      expect(Math.abs(share / TRIALS - 0.95)).toBeLessThan(within(0.95));
    }
  });

  it('n = 6: Grubbs flags 5 % of sound trials', () => {
    const random = createRandom(7);
    let flagged = 0;
    for (let trial = 0; trial < TRIALS; trial += 1) {
      if (grubbs(Array.from({ length: 6 }, () => random.normal())).flagged) flagged += 1;
    }
    expect(Math.abs(flagged / TRIALS - 0.05)).toBeLessThan(within(0.05));
  });
});
