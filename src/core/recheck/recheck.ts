import { binomialDistribution } from 'simple-statistics';
import type { Recipe } from '../recipe/Recipe.ts';
import { nextValueInterval } from '../statistics/next-value-interval.ts';
import type { TrialRun } from '../trial/TrialResult.ts';
import { forWhatIf } from './for-what-if.ts';
import type { Recheck, RecheckVerdict, RunRecheck } from './RecheckResult.ts';
import { type MadeOn, RECHECK_LIMITS, type RecheckLimits, recheckRun } from './recheck-run.ts';

export interface RunToRecheck {
  readonly run: TrialRun;
  readonly before?: RunRecheck['before'];
  /** What the recording names; absent where not known. */
  readonly madeOn?: MadeOn;
  /** The recording's id, where it is not the run's source. */
  readonly recordingId?: string;
}

export interface RecheckInput {
  readonly recipe: Recipe;
  readonly runs: readonly RunToRecheck[];
  /** Mean start temperature of the runs that the recipe rests on, °C; null where not known. */
  readonly recipeStartC: number | null;
  readonly limits?: RecheckLimits;
  /** What if: another target or hold than the recipe's, that the runs were analysed by. */
  readonly targetC?: number;
  readonly holdS?: number;
}

const CONFIDENCE = 0.95;
/** Two targets nearer than this are the same, °C. */
const SAME_C = 0.01;

/**
 * Whether a recipe still holds, from runs analysed by today's rules. It holds when every comparable run keeps the full
 * hold at the recipe's dwell and no more later runs lie outside the two-sided 95 % next-run band of the recipe's own
 * trial than chance explains (binomial, one-sided 5 %). The runs that the recipe rests on made the band, so they are
 * not held against it. For another target the band says nothing and is left out.
 */
export function recheck(input: RecheckInput): Recheck {
  const { recipe, runs, recipeStartC, limits = RECHECK_LIMITS } = input;
  const targetC = input.targetC ?? recipe.targetC;
  const holdS = input.holdS ?? recipe.holdS;
  const sameTarget = Math.abs(targetC - recipe.targetC) < SAME_C;
  const whatIf = !sameTarget || holdS !== recipe.holdS;
  const bandS = sameTarget ? bandOf(recipe) : null;
  const own = new Set(recipe.restsOn.map(({ recordingId, runNumber }) => `${recordingId} ${runNumber}`));
  const checked = runs.map(({ run, before, madeOn, recordingId = run.source }) =>
    recheckRun(whatIf ? forWhatIf(run) : run, {
      recipe,
      holdS,
      bandS,
      recipeStartC,
      limits,
      own: own.has(`${recordingId} ${run.result.runNumber}`),
      madeOn: madeOn ?? { assemblyName: null, pressName: null },
      before: before ?? null,
    }),
  );
  const comparable = checked.filter((one) => one.comparable);
  const later = comparable.filter((one) => !one.own);
  const short = comparable.filter((one) => one.holdMet === false).length;
  const outside = later.filter((one) => one.insideBand === false).length;
  const apart = checked.filter((one) => !one.comparable);
  return {
    verdict: verdictOf(comparable.length, short, moreThanChance(outside, later.length)),
    targetC,
    holdS,
    bandS,
    runs: checked,
    counts: {
      usable: checked.filter((one) => !one.reasons.some(isUnusable)).length,
      comparable: comparable.length,
      insideBand: comparable.filter((one) => one.insideBand === true).length,
      holdMet: comparable.filter((one) => one.holdMet === true).length,
      own: comparable.length - later.length,
      otherPress: comparable.filter((one) => one.reasons.some(({ code }) => code === 'other-press')).length,
      notCompared: apart.length,
      notComparedShort: apart.filter((one) => one.holdMet === false).length,
    },
    expectedOutside: later.length * (1 - CONFIDENCE),
  };
}

const isUnusable = ({ code }: RunRecheck['reasons'][number]): boolean =>
  code === 'run-not-usable' || code === 'set-aside';

function bandOf({ statistics }: Recipe): readonly [number, number] | null {
  const { runs, meanSoakS, sdSoakS } = statistics;
  if (meanSoakS === null || sdSoakS === null || runs < 2) return null;
  return nextValueInterval({ values: runs, mean: meanSoakS, sd: sdSoakS }, CONFIDENCE);
}

function verdictOf(comparable: number, short: number, tooManyOutside: boolean): RecheckVerdict {
  if (comparable === 0) return 'not-shown';
  return short > 0 || tooManyOutside ? 'does-not-hold' : 'holds';
}

/** P(at least `outside` of `runs` outside a 95 % band) ≤ 5 %, by the binomial distribution. */
function moreThanChance(outside: number, runs: number): boolean {
  if (outside === 0) return false;
  const shares = binomialDistribution(runs, 1 - CONFIDENCE) ?? [];
  const fewer = shares.slice(0, outside).reduce((sum, share) => sum + share, 0);
  return 1 - fewer <= 0.05;
}
