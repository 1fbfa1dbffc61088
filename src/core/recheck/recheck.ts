import { binomialDistribution } from 'simple-statistics';
import type { Recipe } from '../recipe/Recipe.ts';
import { nextValueInterval } from '../statistics/next-value-interval.ts';
import type { TrialRun } from '../trial/TrialResult.ts';
import type { Recheck, RecheckVerdict, RunRecheck } from './RecheckResult.ts';
import { RECHECK_LIMITS, type RecheckLimits, recheckRun } from './recheck-run.ts';

export interface RecheckInput {
  readonly recipe: Recipe;
  readonly runs: readonly { readonly run: TrialRun; readonly before?: RunRecheck['before'] }[];
  /** Mean start temperature of the runs that the recipe rests on, °C; null where not known. */
  readonly recipeStartC: number | null;
  readonly limits?: RecheckLimits;
}

const CONFIDENCE = 0.95;

/**
 * Whether a recipe still holds, from runs analysed by today's rules. It holds when every comparable run keeps the full
 * hold at the recipe's dwell and no more runs lie outside the two-sided 95 % next-run band of the recipe's own
 * trial than chance explains (binomial, one-sided 5 %); slow ones outside always count against it through their hold.
 */
export function recheck({ recipe, runs, recipeStartC, limits = RECHECK_LIMITS }: RecheckInput): Recheck {
  const bandS = bandOf(recipe);
  const checked = runs.map(({ run, before }) =>
    recheckRun(run, { recipe, bandS, recipeStartC, limits, ...(before === undefined ? {} : { before }) }),
  );
  const comparable = checked.filter((one) => one.comparable);
  const outside = comparable.filter((one) => one.insideBand === false).length;
  const short = comparable.filter((one) => one.holdMet === false).length;
  return {
    verdict: verdictOf(comparable.length, short, outside),
    bandS,
    runs: checked,
    counts: {
      usable: checked.filter((one) => !one.reasons.some(({ code }) => code === 'run-not-usable')).length,
      comparable: comparable.length,
      insideBand: comparable.filter((one) => one.insideBand === true).length,
      holdMet: comparable.filter((one) => one.holdMet === true).length,
    },
    expectedOutside: comparable.length * (1 - CONFIDENCE),
  };
}

function bandOf({ statistics }: Recipe): readonly [number, number] | null {
  const { runs, meanSoakS, sdSoakS } = statistics;
  if (meanSoakS === null || sdSoakS === null || runs < 2) return null;
  return nextValueInterval({ values: runs, mean: meanSoakS, sd: sdSoakS }, CONFIDENCE);
}

function verdictOf(comparable: number, short: number, outside: number): RecheckVerdict {
  if (comparable === 0) return 'not-shown';
  return short > 0 || moreThanChance(outside, comparable) ? 'does-not-hold' : 'holds';
}

/** P(at least `outside` of `runs` outside a 95 % band) ≤ 5 %, by the binomial distribution. */
function moreThanChance(outside: number, runs: number): boolean {
  if (outside === 0) return false;
  const shares = binomialDistribution(runs, 1 - CONFIDENCE) ?? [];
  const fewer = shares.slice(0, outside).reduce((sum, share) => sum + share, 0);
  return 1 - fewer <= 0.05;
}
