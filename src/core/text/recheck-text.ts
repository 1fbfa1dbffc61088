import type { Recheck, RunRecheck } from '../recheck/RecheckResult.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import { neutralise } from './neutralise.ts';
import { recheckReasonText } from './recheck-reason-text.ts';
import { numberText, secondsText, type TemperatureUnit, temperatureText } from './units-text.ts';

/** Up to this many runs are listed whole; of more only those with something against them. */
const LISTED_WHOLE = 40;

const VERDICT: Readonly<Record<Recheck['verdict'], string>> = {
  holds: 'THE RECIPE HOLDS',
  'does-not-hold': 'THE RECIPE DOES NOT HOLD',
  'not-shown': 'NOT SHOWN',
};

/** A re-check in plain lines: verdict and why, then a line for each run, old beside new where they differ. */
export function recheckLines(recipe: Recipe, result: Recheck, unit: TemperatureUnit): readonly string[] {
  const { runs } = result;
  const listed = runs.flatMap((one, index) =>
    runs.length <= LISTED_WHOLE || one.reasons.length > 0 || changedText(one) !== null
      ? runLines(one, index, unit)
      : [],
  );
  return [
    ...recheckSummaryLines(recipe, result, unit),
    ...(runs.length > LISTED_WHOLE
      ? [`Runs with something to say of them (--json lists all ${runs.length}):`]
      : []),
    ...listed,
  ];
}

/** What the verdict is, what it rests on, and what was left out of it. */
export function recheckSummaryLines(
  recipe: Recipe,
  result: Recheck,
  unit: TemperatureUnit,
): readonly string[] {
  const { counts } = result;
  return [
    `${neutralise(recipe.assemblyName)} on ${neutralise(recipe.pressName)}, version ${recipe.version}: dwell ${secondsText(recipe.dwellS, 3)}, hold ${secondsText(recipe.holdS)}, target ${temperatureText(recipe.targetC, unit)}`,
    ...whatIfLines(recipe, result, unit),
    `${VERDICT[result.verdict]}: ${whyText(result)}`,
    bandText(recipe, result, unit),
    `${runsText(result.runs.length)} looked at, ${counts.usable} usable, ${counts.comparable} made under the recipe's conditions.`,
    `Of these ${counts.comparable}: ${result.bandS === null ? '' : `${counts.insideBand} inside the band, `}${counts.holdMet} with the full hold.`,
    ...ownLines(result),
    ...apartLines(result),
    ...(counts.otherPress === 0
      ? []
      : [
          `${runsText(counts.otherPress)} made on another press than ${neutralise(recipe.pressName)}: this says whether the dwell covers that press too.`,
        ]),
  ];
}

const runsText = (count: number): string => `${count} ${count === 1 ? 'run' : 'runs'}`;

function whatIfLines(recipe: Recipe, { targetC, holdS }: Recheck, unit: TemperatureUnit): readonly string[] {
  const asked = [
    ...(Math.abs(targetC - recipe.targetC) < 0.01 ? [] : [`target ${temperatureText(targetC, unit)}`]),
    ...(holdS === recipe.holdS ? [] : [`hold ${secondsText(holdS)}`]),
  ];
  return asked.length === 0 ? [] : [`What if: ${asked.join(', ')} at the recipe's dwell.`];
}

function bandText(recipe: Recipe, { bandS, targetC }: Recheck, unit: TemperatureUnit): string {
  if (bandS !== null)
    return `Band of the recipe's own trial for a next run (95 %): ${secondsText(bandS[0], 2)} to ${secondsText(bandS[1], 2)}.`;
  return recipe.statistics.runs < 2
    ? 'The recipe rests on one run: it has no band.'
    : `The recipe's band is for ${temperatureText(recipe.targetC, unit)}, not for ${temperatureText(targetC, unit)}: left out.`;
}

/** The runs that made the band cannot test it. */
function ownLines({ counts, bandS, expectedOutside }: Recheck): readonly string[] {
  const later = counts.comparable - counts.own;
  if (bandS === null || counts.comparable === 0) return [];
  if (counts.own === 0)
    return [`Chance alone puts about ${numberText(expectedOutside, 1)} of ${later} outside the band.`];
  const own = `The recipe itself rests on ${counts.own} of them: inside its band they prove nothing.`;
  return later === 0
    ? [`${own} No later run was looked at.`]
    : [
        `${own} Chance alone puts about ${numberText(expectedOutside, 1)} of the ${later} later ones outside.`,
      ];
}

function apartLines({ counts }: Recheck): readonly string[] {
  const { notCompared, notComparedShort } = counts;
  if (notCompared === 0) return [];
  const short =
    notComparedShort === 0 ? '' : `; the dwell would leave ${notComparedShort} of them short of the hold`;
  return [`NOT COMPARED: ${runsText(notCompared)}, each for the reason beside it${short}.`];
}

function whyText({ verdict, counts, bandS }: Recheck): string {
  if (verdict === 'not-shown') return 'no usable run was made under the recipe’s conditions.';
  const later = counts.comparable - counts.own;
  if (verdict === 'holds')
    return bandS === null || later === 0
      ? 'every comparable run keeps its hold.'
      : 'every comparable run keeps its hold, and no more lie outside the band than chance explains.';
  const short = counts.comparable - counts.holdMet;
  return short > 0
    ? `${short} comparable ${short === 1 ? 'run falls' : 'runs fall'} short of the hold at this dwell.`
    : 'more runs lie outside the band than chance explains.';
}

function runLines(one: RunRecheck, index: number, unit: TemperatureUnit): readonly string[] {
  const { result, source } = one.run;
  const { upper, lower } = result.platenAtClosingC;
  const level = (name: string, valueC: number | null): readonly string[] =>
    valueC === null ? [] : [`${name} ${temperatureText(valueC, unit)}`];
  const facts = [
    result.soakTimeS === null ? 'no soak time' : `soak ${numberText(result.soakTimeS, 2)} s`,
    ...(one.heldAtDwellS === null ? [] : [`hold left ${numberText(one.heldAtDwellS, 1)} s`]),
    ...(one.insideBand === null ? [] : [one.insideBand ? 'in band' : 'OUT OF BAND']),
    ...level('start', result.startC),
    ...level('upper', upper),
    ...level('lower', lower),
    ...(one.own ? ['own run of the recipe'] : []),
    ...(one.comparable ? [] : ['NOT COMPARED']),
  ];
  const before = changedText(one);
  return [
    `  run ${index + 1}  ${facts.join(', ')}  [${neutralise(source)}]`,
    ...one.reasons.map((reason) => `    ${recheckReasonText(reason, unit)}`),
    ...(before === null ? [] : [`    ${before}`]),
  ];
}

/** What changed since the run was stored; null where nothing did. */
export function changedText({ before, run }: RunRecheck): string | null {
  if (before === null) return null;
  const { soakTimeS, verdict, ruleVersion } = run.result;
  const moved =
    before.soakTimeS === null || soakTimeS === null
      ? before.soakTimeS !== soakTimeS
      : Math.abs(before.soakTimeS - soakTimeS) > 0.0005;
  if (!moved && before.verdict === verdict) return null;
  const why =
    before.ruleVersion === ruleVersion
      ? 'the same rules: another target, hold, option or probe correction than when it was stored'
      : `rules ${before.ruleVersion} then, ${ruleVersion} now`;
  const soak = (value: number | null): string =>
    value === null ? 'no soak time' : `${numberText(value, 2)} s`;
  return `stored: ${soak(before.soakTimeS)}, ${before.verdict}; now: ${soak(soakTimeS)}, ${verdict} (${why})`;
}
