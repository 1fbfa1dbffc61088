import type { Recipe } from '../recipe/Recipe.ts';
import { DWELL_RULE_NAME } from '../text/dwell-text.ts';
import { momentText, RECIPE_FACTS, REPORT_TEXT } from '../text/report-text.ts';
import {
  numberText,
  pressureText,
  secondsText,
  type TemperatureUnit,
  temperatureText,
} from '../text/units-text.ts';
import { fact } from './fact.ts';
import type { FactsBlock } from './ReportContent.ts';

/** A recipe with what it rests on: dwell and its parts, rule, conditions, who accepted it and when. */
export function recipeFacts(recipe: Recipe, unit: TemperatureUnit): FactsBlock {
  const t = (temperatureC: number) => temperatureText(temperatureC, unit);
  const pair = (of: { readonly upper: number | null; readonly lower: number | null } | null) => {
    if (of === null) return null;
    const { upper, lower } = of;
    if (upper !== null && lower !== null) return REPORT_TEXT.upperLower(t(upper), t(lower));
    const one = upper ?? lower;
    return one === null ? null : t(one);
  };
  const measured = pair(recipe.platenMeasuredC);
  return {
    kind: 'facts',
    facts: [
      fact(RECIPE_FACTS.version, RECIPE_FACTS.versionOf(recipe.version, recipe.provisional)),
      fact(RECIPE_FACTS.accepted, RECIPE_FACTS.acceptedBy(recipe.initials, momentText(recipe.acceptedAt))),
      fact(
        RECIPE_FACTS.dwell,
        RECIPE_FACTS.dwellOf({
          dwell: secondsText(recipe.dwellS, 3),
          soak: numberText(recipe.soakS, 2),
          hold: numberText(recipe.holdS, 0),
          margin: numberText(recipe.marginS, 0),
        }),
      ),
      fact(RECIPE_FACTS.rule, RECIPE_FACTS.ruleOf(DWELL_RULE_NAME[recipe.rule], recipe.ruleReason)),
      fact(REPORT_TEXT.target, t(recipe.targetC)),
      fact(REPORT_TEXT.hold, secondsText(recipe.holdS)),
      fact(REPORT_TEXT.platens, pair(recipe.platenSetPointC)),
      ...(measured === null ? [] : [fact(RECIPE_FACTS.platensMeasured, measured)]),
      ...(recipe.gaugePsi === null ? [] : [fact(REPORT_TEXT.gauge, pressureText(recipe.gaugePsi, 1))]),
      fact(
        RECIPE_FACTS.restsOn,
        RECIPE_FACTS.runs(
          recipe.restsOn.length,
          numberText(recipe.statistics.meanSoakS, 2),
          recipe.statistics.sdSoakS === null ? null : numberText(recipe.statistics.sdSoakS, 2),
        ),
      ),
      fact(REPORT_TEXT.adhesive, REPORT_TEXT.adhesiveOf(recipe.adhesive, recipe.dataSheetRevision)),
      ...(recipe.highestDwellS === null
        ? []
        : [fact(REPORT_TEXT.highestDwell, secondsText(recipe.highestDwellS))]),
      ...(recipe.highestPeakC === null ? [] : [fact(REPORT_TEXT.highestPeak, t(recipe.highestPeakC))]),
      ...(recipe.note === '' ? [] : [fact(REPORT_TEXT.note, recipe.note)]),
    ],
  };
}
