import type { Recipe } from '../recipe/Recipe.ts';
import { type ExportField, field } from './ExportField.ts';

/** Fields of `export recipes`, one row a version. */
export const RECIPE_FIELDS: readonly ExportField<Recipe>[] = [
  field('assembly', 'assembly', (recipe) => recipe.assemblyName),
  field('press', 'press', (recipe) => recipe.pressName),
  field('version', 'version; the highest is in force', (recipe) => recipe.version),
  field('acceptedAt', 'accepted, date and time', (recipe) => recipe.acceptedAt),
  field('initials', 'who accepted', (recipe) => recipe.initials),
  field('note', 'note', (recipe) => recipe.note),
  field('simulated', 'true where it rests on simulated readings', (recipe) => recipe.simulated),
  field('provisional', 'true where it rests on one run only', (recipe) => recipe.provisional),
  field('dwellS', 'dwell from press closed: soak, hold and margin', (recipe) => recipe.dwellS),
  field('soakS', 'soak part by the rule', (recipe) => recipe.soakS),
  field('holdS', 'hold', (recipe) => recipe.holdS),
  field('marginS', 'margin', (recipe) => recipe.marginS),
  field('rule', 'dwell rule', (recipe) => recipe.rule),
  field('ruleReason', 'why a less strict rule was chosen', (recipe) => recipe.ruleReason),
  field('dip', 'what a dip does to the hold', (recipe) => recipe.dip),
  field('targetC', 'bond-line target', (recipe) => recipe.targetC),
  field(
    'upperPlatenSetPointC',
    'set point of the upper platen',
    (recipe) => recipe.platenSetPointC?.upper ?? null,
  ),
  field(
    'lowerPlatenSetPointC',
    'set point of the lower platen',
    (recipe) => recipe.platenSetPointC?.lower ?? null,
  ),
  field('upperPlatenMeasuredC', 'upper platen at closing, mean', (recipe) => recipe.platenMeasuredC.upper),
  field('lowerPlatenMeasuredC', 'lower platen at closing, mean', (recipe) => recipe.platenMeasuredC.lower),
  field('gaugePsi', 'gauge pressure', (recipe) => recipe.gaugePsi),
  field('runs', 'runs it rests on', (recipe) => recipe.statistics.runs),
  field('restsOn', 'recording and number of each of these runs', (recipe) =>
    recipe.restsOn.map((run) => `${run.recordingId}#${run.runNumber}`),
  ),
  field('meanSoakS', 'mean soak time', (recipe) => recipe.statistics.meanSoakS),
  field('sdSoakS', 'standard deviation of the soak times', (recipe) => recipe.statistics.sdSoakS),
  field(
    'nextRunUpper95S',
    'one-sided 95 % upper bound for the next run',
    (recipe) => recipe.statistics.nextRunUpper95S,
  ),
  field('adhesive', 'adhesive', (recipe) => recipe.adhesive),
  field('dataSheetRevision', 'revision of the adhesive’s data sheet', (recipe) => recipe.dataSheetRevision),
  field('highestDwellS', 'longest dwell allowed', (recipe) => recipe.highestDwellS),
  field('highestPeakC', 'highest bond-line temperature allowed', (recipe) => recipe.highestPeakC),
  field('leastRecoveryS', 'least recovery time between closings', (recipe) => recipe.leastRecoveryS),
  field('runRuleVersion', 'version of the rules behind its runs', (recipe) => recipe.runRuleVersion),
];
