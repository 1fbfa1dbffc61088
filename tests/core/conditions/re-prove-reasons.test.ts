import { describe, expect, it } from 'vitest';
import { type ReProveFacts, reProveReasons } from '../../../src/core/conditions/re-prove-reasons.ts';
import type { Assembly } from '../../../src/core/press/Press.ts';
import { recheck } from '../../../src/core/recheck/recheck.ts';
import { reProveShort, reProveText } from '../../../src/core/text/re-prove-text.ts';
import { reportRecipe } from '../report/every-report.ts';
import { trialRun } from '../trial/trial-run.ts';

const assembly: Assembly = {
  name: 'WB-212',
  ringOuterDiameterMm: 212,
  ringInnerDiameterMm: 168,
  carrier: null,
  targetC: reportRecipe.targetC,
  holdS: 120,
  adhesive: 'film A-7',
  dataSheetRevision: 'C',
  highestDwellS: 240,
  highestPeakC: null,
  leastRecoveryS: null,
};
const facts: ReProveFacts = {
  recipe: reportRecipe,
  assembly,
  moved: null,
  laterRuns: null,
  // 366 days after the recipe was accepted (2026-03-02 to 2027-03-03).
  now: '2027-03-03T09:00:00Z',
  afterDays: null,
};
const codes = (change: Partial<ReProveFacts>) =>
  reProveReasons({ ...facts, ...change }).map(({ code }) => code);

describe('what asks for a new proof', () => {
  it('nothing, where nothing has changed and no interval is stated', () => {
    expect(codes({})).toEqual([]);
  });

  it('age, by the shop’s own interval: 366 days are over 365 and not over 366', () => {
    expect(codes({ afterDays: 365 })).toEqual(['older']);
    expect(codes({ afterDays: 366 })).toEqual([]);
  });

  it.each([
    ['another adhesive', { adhesive: 'film B-2' }, ['adhesive-changed']],
    ['another revision of its data sheet', { dataSheetRevision: 'D' }, ['data-sheet-changed']],
    ['another target', { targetC: reportRecipe.targetC + 5 }, ['target-changed']],
    ['a longer hold', { holdS: 150 }, ['hold-longer']],
    ['a longest dwell below the recipe’s 175 s', { highestDwellS: 170 }, ['dwell-above-highest']],
    ['an adhesive no longer entered says nothing of a change', { adhesive: null }, []],
    ['a shorter hold asks for nothing', { holdS: 100 }, []],
  ])('%s', (_, change, expected) => {
    expect(codes({ assembly: { ...assembly, ...change } })).toEqual(expected);
  });

  // Dwell 175 s less 120 s of hold leaves 55 s: a soak time of 58 s falls 3 s short.
  it('later runs that fall short of the hold: 1 of 2', () => {
    const laterRuns = recheck({
      recipe: reportRecipe,
      recipeStartC: null,
      runs: [trialRun(53.6), trialRun(58)].map((run) => ({ run })),
    });
    const [reason] = reProveReasons({ ...facts, laterRuns });
    expect(reason).toMatchObject({ code: 'later-runs', runs: 2, short: 1 });
    expect(reason && reProveText(reason, 'F')).toBe(
      'TO BE RE-PROVED: 1 of 2 later runs would fall short of the hold at its dwell',
    );
  });
});

it('beside a heading: nothing, or how many', () => {
  expect(reProveShort(0)).toBe('');
  expect(reProveShort(2)).toBe('2 TO BE RE-PROVED');
});
