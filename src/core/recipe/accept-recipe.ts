import { dwell } from '../trial/dwell.ts';
import type { DwellRule, TrialStatistics } from '../trial/TrialResult.ts';
import { TOLERANCE_WISH } from '../trial/tolerance-upper.ts';
import type { Recipe } from './Recipe.ts';
import { isLessStrict, strictestRule } from './strictest-rule.ts';

/** Everything a recipe states that is not worked out from the trial. */
export interface RecipeWish
  extends Omit<Recipe, 'version' | 'provisional' | 'soakS' | 'dwellS' | 'statistics' | 'rule'> {
  readonly rule: DwellRule;
  readonly statistics: TrialStatistics;
  readonly timerStepS: number;
  /** Highest bond-line temperature seen in the runs it rests on, °C. */
  readonly peakC: number | null;
}

export type RecipeRefusal =
  | { readonly code: 'no-counting-run' }
  | { readonly code: 'two-runs-needed'; readonly rule: DwellRule }
  | { readonly code: 'from-onset' }
  | { readonly code: 'rule-reason-missing'; readonly rule: DwellRule; readonly stricter: DwellRule }
  | { readonly code: 'dwell-above-highest'; readonly dwellS: number; readonly highestDwellS: number }
  | { readonly code: 'peak-above-highest'; readonly peakC: number; readonly highestPeakC: number }
  | { readonly code: 'initials-missing' };

export type RecipeOutcome =
  | { readonly recipe: Omit<Recipe, 'version'>; readonly refusals: readonly [] }
  | { readonly recipe: null; readonly refusals: readonly RecipeRefusal[] };

/**
 * Turns a trial and a person's choice into a recipe, or says by name everything that stands against it:
 * no counting run, soak times from the onset only (short, the unsafe side), a rule less strict than the
 * pre-selected one without a reason, a dwell or peak above what the adhesive allows.
 */
export function acceptRecipe(wish: RecipeWish): RecipeOutcome {
  const { timerStepS, peakC, tolerance: wished, ...stated } = wish;
  const { statistics, rule, holdS, marginS } = wish;
  const tolerance = rule === 'tolerance' ? { tolerance: wished ?? TOLERANCE_WISH } : {};
  const outcome = dwell({ statistics, rule, holdS, marginS, timerStepS, ...tolerance });
  const refusals: RecipeRefusal[] = [];
  if (wish.initials.trim() === '') refusals.push({ code: 'initials-missing' });
  if (statistics.fromOnset) refusals.push({ code: 'from-onset' });
  if (outcome.dwell === null) {
    const { reason } = outcome;
    refusals.push(reason === 'no-counting-run' ? { code: reason } : { code: reason, rule });
    return { recipe: null, refusals };
  }
  refusals.push(...ruleRefusals(wish), ...limitRefusals(wish, outcome.dwell.totalS));
  if (refusals.length > 0) return { recipe: null, refusals };
  const { soakS, totalS, provisional } = outcome.dwell;
  return {
    recipe: Object.freeze({ ...stated, ...tolerance, soakS, dwellS: totalS, provisional }),
    refusals: [],
  };
}

function ruleRefusals({ statistics, rule, ruleReason }: RecipeWish): readonly RecipeRefusal[] {
  const stricter = strictestRule(statistics);
  const reasonGiven = (ruleReason ?? '').trim() !== '';
  return isLessStrict(rule, stricter, statistics) && !reasonGiven
    ? [{ code: 'rule-reason-missing', rule, stricter }]
    : [];
}

function limitRefusals(wish: RecipeWish, dwellS: number): readonly RecipeRefusal[] {
  const { highestDwellS, highestPeakC, peakC } = wish;
  const refusals: RecipeRefusal[] = [];
  if (highestDwellS !== null && dwellS > highestDwellS) {
    refusals.push({ code: 'dwell-above-highest', dwellS, highestDwellS });
  }
  if (highestPeakC !== null && peakC !== null && peakC > highestPeakC) {
    refusals.push({ code: 'peak-above-highest', peakC, highestPeakC });
  }
  return refusals;
}
