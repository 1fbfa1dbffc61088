import { DwellwrightError } from '../../core/DwellwrightError.ts';
import { acceptRecipe } from '../../core/recipe/accept-recipe.ts';
import type { Recipe } from '../../core/recipe/Recipe.ts';
import { recipeGauge } from '../../core/recipe/recipe-gauge.ts';
import { strictestRule } from '../../core/recipe/strictest-rule.ts';
import { headDip } from '../../core/recording/head-dip.ts';
import type { Store } from '../../core/store/Store.ts';
import { recipeRefusalText } from '../../core/text/recipe-text.ts';
import type { DwellOptions } from '../options/outcome-settings.ts';
import { type StoredOutcome, storedOutcome } from './stored-outcome.ts';

export interface AcceptWish extends DwellOptions {
  readonly initials: string;
  readonly reason?: string;
  readonly note: string;
  readonly acceptedAt: string;
  /** Ram gauge pressure that the recipe is made with; worked out for ring and ram where absent. */
  readonly gaugePsi?: number;
  /** How that gauge pressure came to be known; stated unless said. */
  readonly gaugeBy?: 'confirmed' | 'stated';
}

/** Accepts a stored trial's dwell as the next version of its recipe, or refuses by name (exit code 1). */
export function acceptStored(store: Store, trialId: string, wish: AcceptWish): Recipe {
  const stored = storedOutcome(store, trialId, wish);
  const { trial, outcome, head } = stored;
  const assembly = store.assemblies().find((one) => one.name === trial.assemblyName);
  const press = store.presses().find((one) => one.name === trial.pressName);
  const accepted = acceptRecipe({
    assemblyName: trial.assemblyName,
    pressName: trial.pressName,
    acceptedAt: wish.acceptedAt,
    initials: wish.initials,
    note: wish.note,
    platenSetPointC: head?.platenSetPointC ?? null,
    ...restingOn(stored),
    ...recipeGauge({ press, assembly, gaugePsi: wish.gaugePsi ?? null, by: wish.gaugeBy ?? 'stated' }),
    targetC: outcome.settings.targetC,
    rule: wish.rule ?? strictestRule(outcome.statistics),
    ruleReason: wish.reason ?? null,
    holdS: outcome.settings.holdS,
    marginS: outcome.settings.marginS,
    timerStepS: outcome.settings.timerStepS,
    dip: (head === null ? undefined : headDip(head)) ?? 'restarts',
    statistics: outcome.statistics,
    adhesive: assembly?.adhesive ?? null,
    dataSheetRevision: assembly?.dataSheetRevision ?? null,
    highestDwellS: assembly?.highestDwellS ?? null,
    highestPeakC: assembly?.highestPeakC ?? null,
    leastRecoveryS: assembly?.leastRecoveryS ?? null,
    simulated: trial.simulated,
  });
  if (accepted.recipe !== null) return store.saveRecipe(accepted.recipe);
  const [first, ...more] = accepted.refusals.map((refusal) => recipeRefusalText(refusal));
  throw new DwellwrightError(accepted.refusals[0]!.code, `the recipe is refused: ${first}`, {
    exitCode: 1,
    ...(more.length > 0 ? { remedy: more.join(' ') } : {}),
  });
}

/** Runs that count, what they measured of the platens at closing, and their highest peak. */
function restingOn({ runs, outcome }: StoredOutcome) {
  const counting = runs.filter((_, index) => outcome.leftOut[index] === null);
  const mean = (values: readonly (number | null)[]): number | null => {
    const known = values.filter((value) => value !== null);
    return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length;
  };
  const peaks = counting.flatMap(({ result }) => result.peakC ?? []);
  return {
    restsOn: counting.map(({ recordingId, result }) => ({ recordingId, runNumber: result.runNumber })),
    platenMeasuredC: {
      upper: mean(counting.map(({ result }) => result.platenAtClosingC.upper)),
      lower: mean(counting.map(({ result }) => result.platenAtClosingC.lower)),
    },
    peakC: peaks.length === 0 ? null : Math.max(...peaks),
    runRuleVersion: Math.max(0, ...counting.map(({ result }) => result.ruleVersion)),
  };
}
