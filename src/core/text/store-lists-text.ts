import type { Assembly, Press } from '../press/Press.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import type { StoredTrial } from '../store/Store.ts';
import { cureFactsText } from './cure-text.ts';
import { neutralise } from './neutralise.ts';
import { recipeGaugeText, recipePlatensText, WITHDRAW_TEXT, withdrawnText } from './recipe-text.ts';
import { numberText, type TemperatureUnit, temperatureText } from './units-text.ts';

const known = (value: number | null, unit: string): string =>
  value === null ? 'not stated' : `${numberText(value, 1)} ${unit}`;

/** One line about a press. */
export function pressLine(press: Press): string {
  const setPoint = press.platenSetPointC;
  const platens =
    setPoint === null
      ? 'not stated'
      : `${temperatureText(setPoint.upper)} upper, ${temperatureText(setPoint.lower)} lower`;
  return `${neutralise(press.name)}: ${press.rams} × ram bore ${known(press.ramBoreMm, 'mm')}, platens ${platens}, timer starts at ${press.timerStartsAt}, offset ${numberText(press.timerOffsetS, 1)} s, step ${numberText(press.timerStepS, 1)} s`;
}

/** Net facing pressure as a band, or as one value. */
export function netFacingText({ low, high }: { readonly low: number; readonly high: number }): string {
  return low === high ? `${numberText(low, 0)} psi` : `${numberText(low, 0)} to ${numberText(high, 0)} psi`;
}

/** One line about an assembly. */
export function assemblyLine(assembly: Assembly, unit: TemperatureUnit): string {
  const ring = `ring ${known(assembly.ringOuterDiameterMm, 'mm')} OD, ${known(assembly.ringInnerDiameterMm, 'mm')} ID`;
  const adhesive = assembly.adhesive === null ? '' : `, adhesive ${neutralise(assembly.adhesive)}`;
  const net = assembly.netFacingPsi == null ? '' : `, net facing ${netFacingText(assembly.netFacingPsi)}`;
  const cure = assembly.cure == null ? '' : `, ${cureFactsText(assembly.cure, unit)}`;
  return `${neutralise(assembly.name)}: ${ring}, target ${temperatureText(assembly.targetC, unit)}, hold ${numberText(assembly.holdS, 0)} s${net}${adhesive}${cure}`;
}

/** A recipe in a few lines; `inForce` marks the one that bonding would take. */
export function recipeLines(recipe: Recipe, unit: TemperatureUnit, inForce = false): string {
  const marks = [
    recipe.simulated ? 'SIMULATED' : '',
    recipe.withdrawn == null ? '' : WITHDRAW_TEXT.withdrawn,
    inForce ? WITHDRAW_TEXT.inForce : '',
    recipe.provisional ? 'PROVISIONAL (one run)' : '',
  ]
    .filter(Boolean)
    .join(', ');
  const parts = `soak ${numberText(recipe.soakS, 1)} s + hold ${numberText(recipe.holdS, 0)} s + margin ${numberText(recipe.marginS, 0)} s`;
  const lines = [
    `${neutralise(recipe.assemblyName)} on ${neutralise(recipe.pressName)}, version ${recipe.version}${marks === '' ? '' : ` — ${marks}`}`,
    `  dwell ${numberText(recipe.dwellS, 1)} s = ${parts}, rule "${recipe.rule}", target ${temperatureText(recipe.targetC, unit)}`,
    `  ${recipePlatensText(recipe, unit)}`,
    `  ${recipeGaugeText(recipe)}`,
    `  rests on ${recipe.restsOn.length} ${recipe.restsOn.length === 1 ? 'run' : 'runs'}, accepted ${recipe.acceptedAt.slice(0, 16).replace('T', ' ')} UTC by ${neutralise(recipe.initials)}`,
  ];
  const withdrawn = withdrawnText(recipe);
  if (withdrawn !== null) lines.splice(1, 0, `  ${withdrawn}`);
  if (recipe.ruleReason !== null) lines.push(`  less strict rule because: ${neutralise(recipe.ruleReason)}`);
  if (recipe.note !== '') lines.push(`  note: ${neutralise(recipe.note)}`);
  return lines.join('\n');
}

/** One line about a trial. */
export function trialLine(trial: StoredTrial): string {
  const open = trial.closedAt === null ? ', open' : '';
  return `${trial.trialId}  ${trial.startedAt}  ${trialHeading(trial)}${open}`;
}

/** What a trial is of: "WB-212 on North — SIMULATED". */
export function trialHeading(trial: StoredTrial): string {
  return `${neutralise(trial.assemblyName)} on ${neutralise(trial.pressName)}${trial.simulated ? ' — SIMULATED' : ''}`;
}
