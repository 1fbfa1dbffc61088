import type { Recipe } from '../recipe/Recipe.ts';
import type { TrialStatistics } from '../trial/TrialResult.ts';

export type RecipeCover =
  | { readonly kind: 'too-few-runs'; readonly runs: number }
  | {
      readonly kind: 'covers' | 'too-short' | 'too-hot';
      /** Upper bound of the next run's soak on that press + what is common to all runs + hold, s. */
      readonly neededS: number;
      /** Dwell of the recipe less what is needed, s; negative when short. */
      readonly spareS: number;
      /** Null where the recipe states no highest peak or no peak was seen. */
      readonly spareC: number | null;
    };

/**
 * May this recipe be used on that press? The first answer, from that press's own runs: does the dwell cover
 * the one-sided 95 % bound of the next run there plus the hold, and do the bond lines stay below the highest
 * allowed peak? `commonUpperS` is what the parts common to all runs (the probe) may make it short by.
 */
export function recipeCovers(input: {
  readonly recipe: Pick<Recipe, 'dwellS' | 'holdS' | 'highestPeakC'>;
  readonly statistics: TrialStatistics;
  readonly peakC: number | null;
  readonly commonUpperS?: number;
}): RecipeCover {
  const { recipe, statistics, peakC, commonUpperS = 0 } = input;
  if (statistics.nextRunUpper95S === null) return { kind: 'too-few-runs', runs: statistics.runs };
  const neededS = statistics.nextRunUpper95S + commonUpperS + recipe.holdS;
  const spareS = recipe.dwellS - neededS;
  const spareC = recipe.highestPeakC === null || peakC === null ? null : recipe.highestPeakC - peakC;
  const kind = spareS < 0 ? 'too-short' : spareC !== null && spareC < 0 ? 'too-hot' : 'covers';
  return { kind, neededS, spareS, spareC };
}
