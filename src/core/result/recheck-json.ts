import type { DwellAtTarget } from '../recheck/dwell-at-target.ts';
import type { Recheck } from '../recheck/RecheckResult.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import { recheckReasonText } from '../text/recheck-reason-text.ts';
import type { TemperatureUnit } from '../text/units-text.ts';

/** A re-check as `--json` prints it; absent values null, units in the key names. */
export function recheckJson(
  recipe: Recipe,
  result: Recheck,
  byTarget: readonly DwellAtTarget[],
  unit: TemperatureUnit,
): Record<string, unknown> {
  return {
    recipe: {
      assembly: recipe.assemblyName,
      press: recipe.pressName,
      version: recipe.version,
      dwellS: recipe.dwellS,
      holdS: recipe.holdS,
      targetC: recipe.targetC,
      rule: recipe.rule,
    },
    verdict: result.verdict,
    targetC: result.targetC,
    holdS: result.holdS,
    bandS: result.bandS,
    counts: { lookedAt: result.runs.length, ...result.counts },
    expectedOutsideByChance: result.expectedOutside,
    runs: result.runs.map((one) => ({
      source: one.run.source,
      runNumber: one.run.result.runNumber,
      soakTimeS: one.run.result.soakTimeS,
      verdict: one.run.result.verdict,
      startC: one.run.result.startC,
      platenAtClosingC: one.run.result.platenAtClosingC,
      ownRunOfTheRecipe: one.own,
      comparable: one.comparable,
      insideBand: one.insideBand,
      holdAtDwellS: one.heldAtDwellS,
      holdMet: one.holdMet,
      reasons: one.reasons.map((reason) => recheckReasonText(reason, unit)),
      reasonCodes: one.reasons.map((reason) => reason.code),
      before: one.before,
    })),
    byTarget,
  };
}
