import { describe, expect, it } from 'vitest';
import { acceptRecipe, type RecipeWish } from '../../../src/core/recipe/accept-recipe.ts';
import { isLessStrict, strictestRule } from '../../../src/core/recipe/strictest-rule.ts';
import { recipeRefusalText } from '../../../src/core/text/recipe-text.ts';
import { trialStatistics } from '../../../src/core/trial/trial-statistics.ts';
import { suspectFor, trialRun } from '../trial/trial-run.ts';

const statistics = trialStatistics([53, 53.5, 54].map((soak) => trialRun(soak)));

const WISH: RecipeWish = Object.freeze({
  assemblyName: 'WB-212',
  pressName: 'North',
  acceptedAt: '2026-03-02T09:30:00+00:00',
  initials: 'KT',
  note: '',
  platenSetPointC: { upper: 232.2, lower: 232.2 },
  platenMeasuredC: { upper: 231.8, lower: 232.4 },
  gaugePsi: 90,
  targetC: 176.67,
  rule: 'next-run',
  ruleReason: null,
  holdS: 120,
  marginS: 0,
  dip: 'restarts',
  statistics,
  restsOn: [{ recordingId: 'r1', runNumber: 1 }],
  adhesive: 'demo adhesive',
  dataSheetRevision: 'rev 1',
  highestDwellS: null,
  highestPeakC: null,
  leastRecoveryS: 180,
  runRuleVersion: 1,
  simulated: true,
  timerStepS: 1,
  peakC: 220,
});

const codes = (change: Partial<RecipeWish>) =>
  acceptRecipe({ ...WISH, ...change }).refusals.map(({ code }) => code);

describe('accepting a recipe', () => {
  it('by the pre-selected rule: 176 s, resting on three runs', () => {
    const { recipe, refusals } = acceptRecipe(WISH);
    expect(refusals).toEqual([]);
    expect(recipe).toMatchObject({
      rule: 'next-run',
      dwellS: 176,
      holdS: 120,
      provisional: false,
      leastRecoveryS: 180,
    });
    expect(recipe).not.toHaveProperty('peakC');
    expect(recipe).not.toHaveProperty('timerStepS');
  });

  it('the mean rule needs a reason, for it gives less than the pre-selected one', () => {
    expect(codes({ rule: 'mean' })).toEqual(['rule-reason-missing']);
    expect(codes({ rule: 'mean', ruleReason: '   ' })).toEqual(['rule-reason-missing']);
    expect(codes({ rule: 'mean', ruleReason: 'customer drawing asks for the mean' })).toEqual([]);
  });

  it('the tolerance rule is stricter and needs none', () => {
    expect(codes({ rule: 'tolerance' })).toEqual([]);
    // k at n = 3, content 0.9, confidence 0.95: 6.155 (DOT/FAA/AR-03/19): 53.5 + 6.155·0.5 + 120 = 176.58.
    const wish = { rule: 'tolerance', tolerance: { content: 0.9, confidence: 0.95 } } as const;
    expect(acceptRecipe({ ...WISH, ...wish }).recipe).toMatchObject({ ...wish, dwellS: 177 });
    expect(acceptRecipe({ ...WISH, rule: 'tolerance' }).recipe?.tolerance).toEqual({
      content: 0.95,
      confidence: 0.95,
    });
    expect(acceptRecipe(WISH).recipe).not.toHaveProperty('tolerance');
  });

  it('a dwell of 176 s above the highest allowed 175 s is refused by name, one of 176 s is not', () => {
    expect(acceptRecipe({ ...WISH, highestDwellS: 175 }).refusals).toEqual([
      { code: 'dwell-above-highest', dwellS: 176, highestDwellS: 175 },
    ]);
    expect(codes({ highestDwellS: 176 })).toEqual([]);
  });

  it('a peak of 220 °C above the highest allowed 215 °C is refused by name', () => {
    expect(codes({ highestPeakC: 215 })).toEqual(['peak-above-highest']);
  });

  it('one run makes a provisional recipe by the mean without further reason, and none by a bound', () => {
    const one = trialStatistics([trialRun(53.5)]);
    expect(strictestRule(one)).toBe('mean');
    expect(acceptRecipe({ ...WISH, statistics: one, rule: 'mean' }).recipe?.provisional).toBe(true);
    expect(codes({ statistics: one })).toEqual(['two-runs-needed']);
  });

  it('no counting run, or soak times from the onset only, make no recipe', () => {
    expect(codes({ statistics: trialStatistics([]) })).toEqual(['no-counting-run']);
    const onset = [49, 50].map((soak) => trialRun(soak, { by: 'onset', ...suspectFor('from-onset') }));
    expect(codes({ statistics: trialStatistics(onset) })).toEqual(['from-onset']);
  });

  it('everything that stands against it is said at once', () => {
    expect(codes({ initials: ' ', rule: 'mean', highestDwellS: 100, highestPeakC: 200 })).toEqual([
      'initials-missing',
      'rule-reason-missing',
      'dwell-above-highest',
      'peak-above-highest',
    ]);
  });

  it('strictness goes by the soak the rule gives, so a slowest run beyond the bound is not less strict', () => {
    const many = trialStatistics(
      [...Array.from({ length: 40 }, (_, index) => 53 + (index % 3) * 0.1), 56].map((soak) => trialRun(soak)),
    );
    expect(isLessStrict('slowest', 'next-run', many)).toBe(false);
    expect(isLessStrict('mean', 'next-run', many)).toBe(true);
  });

  it('every refusal reads as a sentence that says what to do', () => {
    const { refusals } = acceptRecipe({
      ...WISH,
      initials: '',
      rule: 'mean',
      highestDwellS: 100,
      highestPeakC: 200,
    });
    const texts = refusals.map((refusal) => recipeRefusalText(refusal));
    expect(texts[2]).toBe(
      "The dwell of 174 s is above the highest allowed dwell of 100 s: check the limit against the adhesive's data sheet, or find why the soak is slow.",
    );
    expect(texts[3]).toContain('428 °F (220 °C)');
    expect(texts.every((text) => text.endsWith('.'))).toBe(true);
  });
});
