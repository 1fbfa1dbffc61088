import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../src/core/simulator/create-random.ts';
import { sampleMean } from '../../../src/core/statistics/sample-mean.ts';
import { soakTimeBudget } from '../../../src/core/uncertainty/soak-time-budget.ts';
import { trialRun } from '../trial/trial-run.ts';

const TRUE_SOAK_S = 53.5;
const SD_S = 0.8;
const SLOPE_C_PER_S = 1.37;
const LIMIT_C = 2.2;

/** Share of seeded trials whose mean ± expanded uncertainty holds the true soak time. */
function coverage({ trials, runs, probe }: { trials: number; runs: number; probe: boolean }): number {
  const random = createRandom(42 + runs);
  let held = 0;
  for (let trial = 0; trial < trials; trial += 1) {
    // One probe for the whole trial: its error is the same in every run.
    const probeErrorC = LIMIT_C * (2 * random.uniform() - 1);
    const offsetS = probe ? probeErrorC / SLOPE_C_PER_S : 0;
    const soakTimesS = Array.from({ length: runs }, () => TRUE_SOAK_S + offsetS + SD_S * random.normal());
    const { total } = soakTimeBudget(
      soakTimesS.map((soak) => trialRun(soak, { slopeCPerS: SLOPE_C_PER_S })),
      probe ? [{ code: 'thermocouple-tolerance', stated: { limitC: LIMIT_C } }] : [],
      { draws: 4000, seed: trial + 1 },
    );
    if (Math.abs(sampleMean(soakTimesS) - TRUE_SOAK_S) <= total.expandedUncertaintyS) held += 1;
  }
  return held / trials;
}

describe('the expanded uncertainty of a trial holds the truth', () => {
  it('without common parts, 5 runs: 95 % of 4,000 seeded trials within 4 binomial standard errors', () => {
    expect(Math.abs(coverage({ trials: 4000, runs: 5, probe: false }) - 0.95)).toBeLessThan(
      4 * Math.sqrt((0.95 * 0.05) / 4000),
    );
  });

  // Where the spread is estimated the interval may hold a little more than it claims, never clearly less.
  it.each([3, 5, 10])(
    'with a probe anywhere within ±2.2 °C, %i runs: 93 to 99 % of 1,000 seeded trials',
    (runs) => {
      const share = coverage({ trials: 1000, runs, probe: true });
      expect(share).toBeGreaterThan(0.93);
      expect(share).toBeLessThan(0.99);
    },
  );
});
