import type { Recipe } from '../recipe/Recipe.ts';
import { type WelchInterval, welchInterval } from '../statistics/welch-interval.ts';
import type { Equivalence, EquivalencePlan } from '../transfer/EquivalencePlan.ts';
import { equivalence } from '../transfer/equivalence.ts';
import { type RecipeCover, recipeCovers } from '../transfer/recipe-covers.ts';
import { countingRuns } from '../trial/counting-runs.ts';
import type { TrialRun, TrialStatistics } from '../trial/TrialResult.ts';
import { trialStatistics } from '../trial/trial-statistics.ts';

/** Trials of one assembly on both presses, soak times in s. */
export interface TrialComparison {
  readonly first: TrialStatistics;
  readonly second: TrialStatistics;
  readonly firstSoakTimesS: readonly number[];
  readonly secondSoakTimesS: readonly number[];
  /** Second less first, 95 % (Welch); null under two counting runs a side. */
  readonly difference: WelchInterval | null;
  /** Null where no margins were stated. */
  readonly equivalence: Equivalence | null;
  /** Null where no recipe is known. */
  readonly cover: RecipeCover | null;
}

export interface TrialComparisonInput {
  readonly first: readonly TrialRun[];
  readonly second: readonly TrialRun[];
  readonly plan: EquivalencePlan | null;
  readonly probePartS: number;
  /** Proved on the first press. */
  readonly recipe: Pick<Recipe, 'dwellS' | 'holdS' | 'highestPeakC'> | null;
}

/**
 * Transfer of a recipe between presses: first, does its dwell cover the second press by that press's own runs; then, are the
 * two alike within margins stated beforehand. Only runs that count enter, as in a trial.
 */
export function compareTrials(input: TrialComparisonInput): TrialComparison {
  const first = trialStatistics(input.first);
  const second = trialStatistics(input.second);
  const firstSoakTimesS = soakTimesS(input.first);
  const secondSoakTimesS = soakTimesS(input.second);
  const peaksC = countingRuns(input.second).counting.flatMap(({ result }) =>
    result.peakC === null ? [] : [result.peakC],
  );
  return {
    first,
    second,
    firstSoakTimesS,
    secondSoakTimesS,
    difference:
      firstSoakTimesS.length > 1 && secondSoakTimesS.length > 1
        ? welchInterval(firstSoakTimesS, secondSoakTimesS)
        : null,
    equivalence:
      input.plan === null
        ? null
        : equivalence({ firstSoakTimesS, secondSoakTimesS, plan: input.plan, probePartS: input.probePartS }),
    cover:
      input.recipe === null
        ? null
        : recipeCovers({
            recipe: input.recipe,
            statistics: second,
            peakC: peaksC.length === 0 ? null : Math.max(...peaksC),
            commonUpperS: input.probePartS,
          }),
  };
}

function soakTimesS(runs: readonly TrialRun[]): readonly number[] {
  return countingRuns(runs).counting.flatMap(({ result }) =>
    result.soakTimeS === null ? [] : [result.soakTimeS],
  );
}
