import type { RecipeRefusal } from '../recipe/accept-recipe.ts';
import type { Pressing } from '../recipe/Pressing.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import type { GaugeMoved } from '../recipe/recipe-gauge.ts';
import { DWELL_RULE_NAME } from './dwell-text.ts';
import { neutralise } from './neutralise.ts';
import {
  lengthText,
  pressureText,
  secondsText,
  type TemperatureUnit,
  temperatureText,
} from './units-text.ts';

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

const GAUGE_BY: Readonly<Record<Pressing['gaugeBy'], string>> = {
  'worked-out': 'worked out',
  confirmed: 'confirmed at the gauge',
  stated: 'stated',
};

/** Gauge pressure of a recipe with what it rests on: "ram gauge 94.1 psi (649 kPa), worked out: 225 psi … on the ring". */
export function recipeGaugeText({ gaugePsi, pressing }: Pick<Recipe, 'gaugePsi' | 'pressing'>): string {
  if (gaugePsi === null) return 'ram gauge not stated';
  const gauge = `ram gauge ${pressureText(gaugePsi, 1)}`;
  return pressing == null
    ? gauge
    : `${gauge}, ${GAUGE_BY[pressing.gaugeBy]}: ${pressureText(pressing.netFacingPsi)} on the ring, ${ramText(pressing)}`;
}

/** "1 ram of 200 mm (7.874 in) bore". */
export function ramText({ rams, ramBoreMm }: Pick<Pressing, 'rams' | 'ramBoreMm'>): string {
  return `${rams} ${rams === 1 ? 'ram' : 'rams'} of ${lengthText(ramBoreMm)} bore`;
}

/** Platen set points of a recipe. */
export function recipePlatensText(
  { platenSetPointC }: Pick<Recipe, 'platenSetPointC'>,
  unit: TemperatureUnit,
): string {
  if (platenSetPointC === null) return 'platen set points not stated';
  const { upper, lower } = platenSetPointC;
  return upper === lower
    ? `platens set to ${temperatureText(upper, unit)}`
    : `platens set to ${temperatureText(upper, unit)} upper, ${temperatureText(lower, unit)} lower`;
}

/** "withdrawn 2026-03-04 09:10 UTC by AB: adhesive changed"; null where it is in use. */
export function withdrawnText({ withdrawn }: Pick<Recipe, 'withdrawn'>): string | null {
  if (withdrawn == null) return null;
  const { withdrawnAt, initials, reason } = withdrawn;
  return `withdrawn ${minuteText(withdrawnAt)} by ${neutralise(initials)}: ${neutralise(reason)}`;
}

/** A recipe's settings and standing as a sentence of a report. */
export function recipeMadeWithText(recipe: Recipe, unit: TemperatureUnit): string {
  const withdrawn = withdrawnText(recipe);
  const standing = [
    ...(recipe.simulated ? ['it rests on simulated readings and is in force for no real press'] : []),
    ...(withdrawn === null ? [] : [withdrawn]),
  ];
  const parts = [recipePlatensText(recipe, unit), recipeGaugeText(recipe), ...standing];
  return `Version ${recipe.version}: ${parts.join('; ')}.`;
}

/** Ring or ram are no longer those that the recipe's gauge pressure was for. */
export function gaugeMovedText({ recipePsi, todayPsi, netFacingPsi, wantedNetPsi }: GaugeMoved): string {
  return `Gauge: the recipe says ${pressureText(recipePsi, 1)}, but ring and ram as entered today need ${pressureText(todayPsi, 1)} for ${pressureText(wantedNetPsi)} on the ring; the recipe's gauge would give ${pressureText(netFacingPsi)}. Check bore and ring before bonding.`;
}

/** A moment in UTC to the minute. */
const minuteText = (iso: string): string => {
  const at = new Date(iso);
  return Number.isNaN(at.getTime())
    ? neutralise(iso)
    : `${at.toISOString().slice(0, 16).replace('T', ' ')} UTC`;
};

/** What withdrawing says and refuses. */
export const WITHDRAW_TEXT = {
  done: (recipe: Recipe) =>
    `Withdrawn: ${neutralise(recipe.assemblyName)} on ${neutralise(recipe.pressName)}, version ${recipe.version}. It stays on record and is offered no more.`,
  nowInForce: (recipe: Recipe | null) =>
    recipe === null
      ? 'No recipe is in force for this assembly and press now.'
      : `In force now: version ${recipe.version}, dwell ${secondsText(recipe.dwellS)}${recipe.simulated ? ', SIMULATED' : ''}.`,
  already: (recipe: Recipe) => `version ${recipe.version} is ${withdrawnText(recipe) ?? 'withdrawn'}`,
  inForce: 'in force',
  withdrawn: 'WITHDRAWN',
} as const;
