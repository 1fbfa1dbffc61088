import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../src/core/simulator/create-random.ts';
import { normalCdf } from '../../../src/core/statistics/normal-cdf.ts';
import { welchInterval } from '../../../src/core/statistics/welch-interval.ts';
import {
  equivalenceText,
  oneTrialPerPressText,
  powerText,
  recipeCoverText,
} from '../../../src/core/text/transfer-text.ts';
import { equivalence } from '../../../src/core/transfer/equivalence.ts';
import { equivalencePower } from '../../../src/core/transfer/equivalence-power.ts';
import { recipeCovers } from '../../../src/core/transfer/recipe-covers.ts';
import { trialStatistics } from '../../../src/core/trial/trial-statistics.ts';
import { column, example } from '../statistics/published.ts';
import { trialRun } from '../trial/trial-run.ts';

const plan = { slowerS: 3, fasterS: 3, statedAt: '2026-03-02T08:00:00+00:00' };
const presses = { first: 'North', second: 'South' };

describe('interval of the difference of two means (Welch)', () => {
  it("Student's sleep data: difference 1.58, 95 % −0.2054832 to 3.3654832, 17.776 degrees of freedom (R)", () => {
    const { inputs, published } = example('ttest-student-sleep');
    const result = welchInterval(inputs.group1, inputs.group2);
    expect(result.low).toBeCloseTo(-published.welch.ci95[1], 6);
    expect(result.high).toBeCloseTo(-published.welch.ci95[0], 6);
    expect(result.degreesOfFreedom).toBeCloseTo(published.welch.dof, 3);
  });

  it('AUTO83B (NIST/SEMATECH 1.3.5.3): 136.87 degrees of freedom, interval as by scipy and R', () => {
    const rows = readFileSync(new URL('../../reference/statistics/auto83b.csv', import.meta.url), 'utf8')
      .trim()
      .split('\n')
      .slice(1);
    const of = (group: string) =>
      rows.filter((row) => row.startsWith(`${group},`)).map((row) => Number(row.split(',')[1]));
    const groups = [...new Set(rows.map((row) => row.split(',')[0] ?? ''))];
    const { recomputed } = example('ttest-welch-auto83b');
    const result = welchInterval(of(groups[1] ?? ''), of(groups[0] ?? ''));
    expect(result.degreesOfFreedom).toBeCloseTo(recomputed.dof, 8);
    expect(result.low).toBeCloseTo(recomputed.ci95_of_difference[0], 9);
    expect(result.high).toBeCloseTo(recomputed.ci95_of_difference[1], 9);
    expect(column('auto83b.csv', 1).length).toBe(328);
  });
});

describe('normal distribution function', () => {
  // Abramowitz and Stegun, table 26.1 (from memory): Φ(1) and Φ(2) to ten decimals.
  it.each([
    [0, 0.5],
    [1, 0.8413447461],
    [2, 0.9772498681],
    [-1, 0.1586552539],
  ])('at %s is %s', (z, p) => {
    expect(normalCdf(z)).toBeCloseTo(p, 10);
  });
});

describe('equivalence of two presses', () => {
  it('same runs on both: shown, interval symmetric about 0', () => {
    const soaks = [53, 53.5, 54, 53.2];
    const result = equivalence({ firstSoakTimesS: soaks, secondSoakTimesS: soaks, plan });
    expect(result.kind).toBe('shown');
    if (result.kind !== 'shown') return;
    expect(result.lowS).toBeCloseTo(-result.highS, 10);
  });

  // By hand: s = 0.5 on both, n = 3, t(0.95, 4) = 2.132 (table 1.3.6.7.2): half-width 2.132·0.5·√(2/3) = 0.870.
  it('South 0.8 s slower, deviation 0.5 s, three runs each: within −0.1 to +1.7 s', () => {
    const result = equivalence({
      firstSoakTimesS: [53, 53.5, 54],
      secondSoakTimesS: [53.8, 54.3, 54.8],
      plan,
    });
    expect(result.kind).toBe('shown');
    expect(equivalenceText(result, presses)).toBe(
      'Shown: South within −0.1 to +1.7 s of North (90 %), inside ±3 s.',
    );
  });

  it('4.5 s slower: different, 3.6 to 5.4 s', () => {
    const result = equivalence({ firstSoakTimesS: [53, 53.5, 54], secondSoakTimesS: [57.5, 58, 58.5], plan });
    expect(equivalenceText(result, presses)).toBe(
      'Different: South is 3.6 to 5.4 s slower than North (90 %).',
    );
    const turned = equivalence({ firstSoakTimesS: [57.5, 58, 58.5], secondSoakTimesS: [53, 53.5, 54], plan });
    expect(equivalenceText(turned, presses)).toBe(
      'Different: South is 3.6 to 5.4 s faster than North (90 %).',
    );
  });

  // s = 2, n = 3: half-width 2.132·2·√(2/3) = 3.481; with 1 s slower −2.5 to +4.5. With n + k runs each
  // t·2·√(2/n) must be below 2: n 6 1.812·1.155 = 2.09, n 7 1.782·1.069 = 1.905, so about 4 more.
  it('1 s slower with a deviation of 2 s: not shown, could be up to 4.5 s slower, about 4 more runs each', () => {
    const result = equivalence({ firstSoakTimesS: [51, 53, 55], secondSoakTimesS: [52, 54, 56], plan });
    expect(equivalenceText(result, presses)).toBe(
      'Not shown: South could be up to 4.5 s slower than North; about 4 more runs each.',
    );
  });

  it('a difference beyond the margin that is not proved: more runs alone would not show it', () => {
    const result = equivalence({ firstSoakTimesS: [51, 53, 55], secondSoakTimesS: [54.5, 56.5, 58.5], plan });
    expect(result).toMatchObject({ kind: 'not-shown', moreRunsEach: null });
  });

  it('different probes widen each end by their part, and the text says so', () => {
    const result = equivalence({
      firstSoakTimesS: [53, 53.5, 54],
      secondSoakTimesS: [53, 53.5, 54],
      plan,
      probePartS: 2.5,
    });
    expect(result.kind).toBe('not-shown');
    expect(equivalenceText(result, presses)).toContain('Different probes: 2.5 s for them is in each end.');
  });

  it('two runs on one side make no claim', () => {
    const result = equivalence({ firstSoakTimesS: [53, 53.5], secondSoakTimesS: [53, 53.5, 54], plan });
    expect(result).toEqual({ kind: 'too-few-runs', runsFirst: 2, runsSecond: 3 });
    expect(equivalenceText(result, presses)).toContain('No claim');
  });

  it('refuses a margin of 0', () => {
    const none = { ...plan, slowerS: 0 };
    expect(() =>
      equivalence({ firstSoakTimesS: [53, 54, 55], secondSoakTimesS: [53, 54, 55], plan: none }),
    ).toThrow(expect.objectContaining({ code: 'option-out-of-range' }));
  });

  it('at a true difference on the margin 5 % at most are shown, over 10,000 seeded pairs', () => {
    const random = createRandom(11);
    const draw = (mean: number) => Array.from({ length: 5 }, () => mean + random.normal());
    let shown = 0;
    for (let pair = 0; pair < 10_000; pair += 1) {
      const result = equivalence({ firstSoakTimesS: draw(50), secondSoakTimesS: draw(53), plan });
      if (result.kind === 'shown') shown += 1;
    }
    expect(shown / 10_000).toBeLessThan(0.05 + 4 * Math.sqrt((0.05 * 0.95) / 10_000));
    expect(shown / 10_000).toBeGreaterThan(0.03);
  });
});

describe('power, to print before starting', () => {
  // scipy 1.17: double integration of the same model, and 1,000,000 simulated pairs (0.30965, 0.764621, 0.967198).
  it.each([
    [3, 2, 0.31032250498568825],
    [4, 2, 0.5693079513641794],
    [5, 2, 0.7641139232408999],
    [8, 2, 0.967225102329504],
    [10, 2, 0.9917302000325805],
    [3, 3, 0.7493941359120295],
    [5, 3, 0.99047241411222],
  ])('%i runs each, margin %s deviations: %s', (runsEach, margin, power) => {
    expect(equivalencePower(runsEach, margin)).toBeCloseTo(power, 4);
  });

  it('is what equivalence() does: 3 runs each, 10,000 seeded pairs', () => {
    const random = createRandom(12);
    const draw = () => Array.from({ length: 3 }, () => 53 + 1.5 * random.normal());
    let shown = 0;
    for (let pair = 0; pair < 10_000; pair += 1) {
      if (equivalence({ firstSoakTimesS: draw(), secondSoakTimesS: draw(), plan }).kind === 'shown')
        shown += 1;
    }
    expect(Math.abs(shown / 10_000 - 0.31)).toBeLessThan(4 * Math.sqrt((0.31 * 0.69) / 10_000));
  });

  it('reads as a sentence, and refuses two runs', () => {
    expect(powerText(3, 2, equivalencePower(3, 2))).toContain('in about 31 % of comparisons');
    expect(() => equivalencePower(2, 2)).toThrow(expect.objectContaining({ code: 'option-out-of-range' }));
  });
});

describe('does the recipe cover that press', () => {
  const statistics = trialStatistics([53, 53.5, 54].map((soak) => trialRun(soak)));

  // Bound 55.186 s (see trial-statistics) + 120 s hold = 175.186 s.
  it('a dwell of 177 s has 1.8 s to spare, one of 174 s is 1.2 s short', () => {
    const recipe = { dwellS: 177, holdS: 120, highestPeakC: 230 };
    const cover = recipeCovers({ recipe, statistics, peakC: 220 });
    expect(recipeCoverText(cover, 'South')).toBe(
      'The recipe covers South: 175.2 s needed for a full hold in the next run (95 %), 1.8 s to spare, 18 °F (10 °C) below the peak limit.',
    );
    const short = recipeCovers({ recipe: { ...recipe, dwellS: 174 }, statistics, peakC: 220 });
    expect(short.kind).toBe('too-short');
    expect(recipeCoverText(short, 'South')).toContain('1.2 s more than its dwell');
  });

  it('what is common to all runs counts against it', () => {
    const recipe = { dwellS: 177, holdS: 120, highestPeakC: null };
    expect(recipeCovers({ recipe, statistics, peakC: 220, commonUpperS: 2 }).kind).toBe('too-short');
  });

  it('a peak above the limit is too hot, one run is too few', () => {
    const recipe = { dwellS: 177, holdS: 120, highestPeakC: 210 };
    expect(recipeCovers({ recipe, statistics, peakC: 220 })).toMatchObject({ kind: 'too-hot', spareC: -10 });
    expect(recipeCovers({ recipe, statistics: trialStatistics([trialRun(53)]), peakC: 220 })).toEqual({
      kind: 'too-few-runs',
      runs: 1,
    });
  });

  it('one trial a press is said to be unable to tell press from set-up', () => {
    expect(oneTrialPerPressText(presses)).toContain('repeat on a second day or with the probe laid anew');
  });
});
