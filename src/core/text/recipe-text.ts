import type { RecipeRefusal } from '../recipe/accept-recipe.ts';
import { DWELL_RULE_NAME } from './dwell-text.ts';
import { secondsText, type TemperatureUnit, temperatureText } from './units-text.ts';

/** One refusal of a recipe in words: what stands against it and what to do. */
export function recipeRefusalText(refusal: RecipeRefusal, unit: TemperatureUnit = 'F'): string {
  switch (refusal.code) {
    case 'no-counting-run':
      return 'No run counts yet: make a run, or take a suspect one in with a reason.';
    case 'two-runs-needed':
      return `The rule "${DWELL_RULE_NAME[refusal.rule]}" needs two runs: make another, or choose the mean for a provisional recipe.`;
    case 'from-onset':
      return 'All soak times are from the onset of the rise and therefore short: make runs with press closed marked by key or contact.';
    case 'rule-reason-missing':
      return `"${DWELL_RULE_NAME[refusal.rule]}" gives less than "${DWELL_RULE_NAME[refusal.stricter]}": state the reason for choosing it.`;
    case 'dwell-above-highest':
      return `The dwell of ${secondsText(refusal.dwellS, 3)} is above the highest allowed dwell of ${secondsText(refusal.highestDwellS, 3)}: check the limit against the adhesive's data sheet, or find why the soak is slow.`;
    case 'peak-above-highest':
      return `The bond line reached ${temperatureText(refusal.peakC, unit)}, above the highest allowed peak of ${temperatureText(refusal.highestPeakC, unit)}: lower the platens and make new runs.`;
    case 'initials-missing':
      return 'State the initials of the person who accepts the recipe.';
  }
}
