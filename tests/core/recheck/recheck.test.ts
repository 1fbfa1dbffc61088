import { describe, expect, it } from 'vitest';
import { recheck } from '../../../src/core/recheck/recheck.ts';
import type { Recipe } from '../../../src/core/recipe/Recipe.ts';
import { noRunResult } from '../../../src/core/session/no-run-result.ts';
import { nextValueInterval } from '../../../src/core/statistics/next-value-interval.ts';
import { recheckLines } from '../../../src/core/text/recheck-text.ts';
import type { TrialRun } from '../../../src/core/trial/TrialResult.ts';

/** A run of the trade's example; nothing here comes from run detection. */
const run = (soakTimeS: number | null, more: Partial<TrialRun['result']> = {}): TrialRun => {
  const made: TrialRun = {
    source: 'made up',
    decision: { kind: 'automatic' },
    result: {
      ...noRunResult(1000, 200),
      soakTimeS,
      startC: 24,
      verdict: 'good',
      reasons: [],
      platenAtClosingC: { upper: 232, lower: 232 },
      ...more,
    },
  };
  return Object.freeze(made);
};

/** Five runs, mean 53.6 s, standard deviation 0.4 s; dwell 175 s with a hold of 120 s leaves 55 s of soak. */
const recipe: Recipe = {
  assemblyName: 'WB-212',
  pressName: 'North',
  version: 1,
  acceptedAt: '2026-03-02T09:00:00Z',
  initials: 'AB',
  note: '',
  provisional: false,
  platenSetPointC: null,
  platenMeasuredC: { upper: 232, lower: 232 },
  gaugePsi: null,
  targetC: 176.667,
  rule: 'next-run',
  ruleReason: null,
  soakS: 54.53,
  holdS: 120,
  marginS: 0,
  dwellS: 175,
  dip: 'restarts',
  statistics: {
    runs: 5,
    meanSoakS: 53.6,
    sdSoakS: 0.4,
    minSoakS: 53,
    maxSoakS: 54.1,
    rangeSoakS: 1.1,
    meanCi95S: [53.1, 54.1],
    nextRunUpper95S: 54.53,
    moreRunsForWidth: 0,
    wantedHalfWidthS: 2,
    partSpreadMissing: false,
    fromOnset: false,
  },
  restsOn: [],
  adhesive: null,
  dataSheetRevision: null,
  highestDwellS: null,
  highestPeakC: null,
  leastRecoveryS: null,
  runRuleVersion: 1,
  simulated: true,
};
Object.freeze(recipe);

const against = (runs: readonly TrialRun[]) =>
  recheck({ recipe, recipeStartC: 24, runs: runs.map((one) => ({ run: one })) });

// Factors of Student prediction intervals, two-sided 95 %, one future value: Hahn and Meeker (1991), formula in the NIST
// Dataplot reference; values computed with scipy 1.17, six decimals.
it.each([
  [2, 15.561859],
  [3, 4.968275],
  [5, 3.041443],
  [10, 2.37257],
  [100, 1.994113],
])('the band of %i runs is mean ± %f standard deviations', (values, factor) => {
  const [low, high] = nextValueInterval({ values, mean: 50, sd: 1 });
  expect(high - 50).toBeCloseTo(factor, 5);
  expect(50 - low).toBeCloseTo(factor, 5);
});

describe('a recipe held against runs', () => {
  it('holds when every run is inside 53.6 ± 3.041443 · 0.4 s and keeps 120 s', () => {
    const result = against([run(53.2), run(53.9), run(54.8)]);
    expect(result.verdict).toBe('holds');
    expect(result.bandS?.[1]).toBeCloseTo(53.6 + 3.041443 * 0.4, 5);
    expect(result.counts).toEqual({
      usable: 3,
      comparable: 3,
      insideBand: 3,
      holdMet: 3,
      own: 0,
      otherPress: 0,
      notCompared: 0,
      notComparedShort: 0,
    });
  });

  it('does not hold when one run leaves 119.9 s of hold', () => {
    const result = against([run(53.2), run(53.9), run(55.1)]);
    expect(result.verdict).toBe('does-not-hold');
    expect(result.runs[2]?.reasons.map(({ code }) => code)).toEqual(['soak-above-band', 'hold-short']);
    expect(result.runs[2]?.heldAtDwellS).toBeCloseTo(119.9, 9);
  });

  it('exactly the full hold is met, float dust or not', () => {
    expect(against([run(175 - 120)]).runs[0]?.holdMet).toBe(true);
    expect(against([run(55.0000001)]).runs[0]?.holdMet).toBe(true);
  });

  // Binomial, p = 0.05: of 20 runs, P(≥ 3 outside) = 7.5 %, P(≥ 4) = 1.6 % (NIST/SEMATECH e-Handbook 1.3.6.6.18, formula; by hand).
  it('3 of 20 runs below the band are chance, 4 are not', () => {
    const runs = (outside: number) => [
      ...new Array(outside).fill(run(52)),
      ...new Array(20 - outside).fill(run(53.6)),
    ];
    expect(against(runs(3)).verdict).toBe('holds');
    expect(against(runs(4)).verdict).toBe('does-not-hold');
  });

  it('a warm start and moved platens are not compared, and said', () => {
    const result = against([
      run(50, { startC: 40 }),
      run(58, { platenAtClosingC: { upper: 232, lower: 220 } }),
      run(53.6, { verdict: 'suspect' }),
    ]);
    expect(result.verdict).toBe('not-shown');
    expect(result.runs.map(({ reasons }) => reasons[0]?.code)).toEqual([
      'start-differs',
      'platen-differs',
      'run-not-usable',
    ]);
  });

  it('nothing to look at is not shown', () => {
    expect(against([]).verdict).toBe('not-shown');
    expect(against([run(null, { verdict: 'unusable' })]).verdict).toBe('not-shown');
  });

  it('a recipe on one run has no band but a hold', () => {
    const one = {
      ...recipe,
      provisional: true,
      statistics: { ...recipe.statistics, runs: 1, sdSoakS: null },
    };
    const result = recheck({ recipe: one, recipeStartC: null, runs: [{ run: run(53) }, { run: run(56) }] });
    expect([result.bandS, result.verdict]).toEqual([null, 'does-not-hold']);
  });

  // The largest distance of one of n values from their mean is (n − 1)/√n standard deviations (Samuelson 1968; from memory):
  // for 5 it is 1.79, inside the band of 3.04. So own runs cannot lie outside and must not thin the others out.
  it('runs that the recipe rests on are marked and not held against its band', () => {
    const resting = [1, 2, 3, 4, 5].map((runNumber) => ({ recordingId: `own-${runNumber}`, runNumber: 1 }));
    const own = resting.map(({ recordingId }) => ({
      run: { ...run(53.6, { runNumber: 1 }), source: recordingId },
    }));
    const later = [52, 52].map((soakS) => ({ run: run(soakS) }));
    const ofOwn: Recipe = { ...recipe, restsOn: resting };
    const alone = recheck({ recipe: ofOwn, recipeStartC: 24, runs: later });
    const mixed = recheck({ recipe: ofOwn, recipeStartC: 24, runs: [...own, ...later] });
    // P(2 of 2 outside) = 0.25 %: too many; P(≥ 2 of 7) = 4.4 % would be as well, P(≥ 1 of 6) = 26 % would not.
    expect([alone.verdict, mixed.verdict]).toEqual(['does-not-hold', 'does-not-hold']);
    expect(mixed.counts.own).toBe(5);
    expect(mixed.expectedOutside).toBeCloseTo(0.1, 12);
    const one = recheck({ recipe: ofOwn, recipeStartC: 24, runs: [...own, { run: run(52) }] });
    // P(1 of 1 outside) = 5 %: at the limit, so it counts.
    expect(one.verdict).toBe('does-not-hold');
    const text = recheckLines(ofOwn, recheck({ recipe: ofOwn, recipeStartC: 24, runs: own }), 'F').join('\n');
    expect(text).toMatch(/rests on 5 of them.*prove nothing\. No later run/);
  });

  it('a run of another assembly is not compared; one of another press is, and said', () => {
    const made = (assemblyName: string, pressName: string) => ({
      run: run(53.6),
      madeOn: { assemblyName, pressName },
    });
    const result = recheck({
      recipe,
      recipeStartC: 24,
      runs: [made('WB-150', 'North'), made('WB-212', 'South'), made('WB-212', 'North')],
    });
    expect(result.runs.map(({ comparable }) => comparable)).toEqual([false, true, true]);
    expect(result.counts).toMatchObject({ comparable: 2, otherPress: 1, notCompared: 1 });
    expect(recheckLines(recipe, result, 'F').join('\n')).toMatch(/WB-150, another assembly: not compared/);
  });

  it('what is not compared stands in the summary, with why and with how many would fall short', () => {
    const result = against([
      run(53.6),
      run(70, { verdict: 'suspect', reasons: [{ code: 'late-mark', severity: 'suspect', facts: {} }] }),
      run(50, { startC: 60 }),
    ]);
    expect(result.verdict).toBe('holds');
    expect(result.counts).toMatchObject({ notCompared: 2, notComparedShort: 1 });
    expect(result.runs[1]?.reasons[0]).toMatchObject({ because: [{ code: 'late-mark' }] });
    expect(recheckLines(recipe, result, 'F').join('\n')).toMatch(/NOT COMPARED: 2 runs.*1 of them short/);
  });

  it('another hold is asked of the recipe’s dwell: 54.5 s of soak leaves 120.5 s, not 120.6 s', () => {
    const asked = (holdS: number) => recheck({ recipe, recipeStartC: 24, runs: [{ run: run(54.5) }], holdS });
    expect([asked(120.5).verdict, asked(120.6).verdict]).toEqual(['holds', 'does-not-hold']);
  });

  it('for another target the band is left out, and a press opened before that hold was done does not count', () => {
    const early = run(45, {
      verdict: 'suspect',
      reasons: [{ code: 'opened-early', severity: 'suspect', facts: {} }],
    });
    const result = recheck({ recipe, recipeStartC: 24, runs: [{ run: early }], targetC: 165 });
    expect([result.bandS, result.verdict]).toEqual([null, 'holds']);
  });
});
