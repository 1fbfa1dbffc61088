import type { DwellAtTarget } from '../recheck/dwell-at-target.ts';
import type { Recheck, RecheckReason, RunRecheck } from '../recheck/RecheckResult.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import { neutralise } from './neutralise.ts';
import {
  differenceText,
  numberText,
  secondsText,
  type TemperatureUnit,
  temperatureText,
} from './units-text.ts';

const VERDICT: Readonly<Record<Recheck['verdict'], string>> = {
  holds: 'THE RECIPE HOLDS',
  'does-not-hold': 'THE RECIPE DOES NOT HOLD',
  'not-shown': 'NOT SHOWN',
};

/** A re-check in plain lines: verdict and why, runs with something against them, old beside new where they differ. */
export function recheckLines(recipe: Recipe, result: Recheck, unit: TemperatureUnit): readonly string[] {
  const { counts, bandS } = result;
  const band =
    bandS === null
      ? 'The recipe rests on one run: it has no band.'
      : `Band of the recipe's own trial for a next run (95 %): ${secondsText(bandS[0], 2)} to ${secondsText(bandS[1], 2)}.`;
  return [
    `${neutralise(recipe.assemblyName)} on ${neutralise(recipe.pressName)}, version ${recipe.version}: dwell ${secondsText(recipe.dwellS, 3)}, hold ${secondsText(recipe.holdS)}, target ${temperatureText(recipe.targetC, unit)}`,
    `${VERDICT[result.verdict]}: ${whyText(result)}`,
    band,
    `${result.runs.length} ${result.runs.length === 1 ? 'run' : 'runs'} looked at, ${counts.usable} usable, ${counts.comparable} made under the recipe's conditions.`,
    `Of these ${counts.comparable}: ${counts.insideBand} inside the band (chance alone puts about ${numberText(result.expectedOutside, 1)} outside), ${counts.holdMet} with the full hold.`,
    ...result.runs.flatMap((one, index) => runLines(one, index, unit)),
  ];
}

function whyText({ verdict, counts }: Recheck): string {
  if (verdict === 'not-shown') return 'no usable run was made under the recipe’s conditions.';
  if (verdict === 'holds')
    return 'every comparable run keeps its hold, and no more lie outside the band than chance explains.';
  const short = counts.comparable - counts.holdMet;
  return short > 0
    ? `${short} comparable ${short === 1 ? 'run falls' : 'runs fall'} short of the hold at this dwell.`
    : 'more runs lie outside the band than chance explains.';
}

/** Only runs with something to say: a thousand good ones need no thousand lines. */
function runLines(one: RunRecheck, index: number, unit: TemperatureUnit): readonly string[] {
  const { result, source } = one.run;
  const before = changedText(one);
  if (one.reasons.length === 0 && before === null) return [];
  const soak = result.soakTimeS === null ? 'no soak time' : `soak ${numberText(result.soakTimeS, 2)} s`;
  return [
    `  run ${index + 1}  ${soak}  [${neutralise(source)}]`,
    ...one.reasons.map((reason) => `    ${recheckReasonText(reason, unit)}`),
    ...(before === null ? [] : [`    ${before}`]),
  ];
}

/** What changed since the run was stored; null where nothing did. */
function changedText({ before, run }: RunRecheck): string | null {
  if (before === null) return null;
  const { soakTimeS, verdict, ruleVersion } = run.result;
  const moved =
    before.soakTimeS === null || soakTimeS === null
      ? before.soakTimeS !== soakTimeS
      : Math.abs(before.soakTimeS - soakTimeS) > 0.0005;
  if (!moved && before.verdict === verdict) return null;
  const why =
    before.ruleVersion === ruleVersion
      ? 'other target, hold or options than when it was stored'
      : `rules ${before.ruleVersion} then, ${ruleVersion} now`;
  const soak = (value: number | null): string =>
    value === null ? 'no soak time' : `${numberText(value, 2)} s`;
  return `stored: ${soak(before.soakTimeS)}, ${before.verdict}; now: ${soak(soakTimeS)}, ${verdict} (${why})`;
}

/** One thing against a run, in words. */
export function recheckReasonText(reason: RecheckReason, unit: TemperatureUnit = 'F'): string {
  switch (reason.code) {
    case 'soak-above-band':
      return `Soak time above the band: limit ${numberText(reason.limitS, 2)} s.`;
    case 'soak-below-band':
      return `Soak time below the band: limit ${numberText(reason.limitS, 2)} s. Warm carrier or hotter platens?`;
    case 'hold-short':
      return `The recipe's dwell leaves ${numberText(reason.heldS, 1)} s of hold, ${numberText(reason.wantedS, 0)} s wanted.`;
    case 'start-differs':
      return `Start ${differenceText(Math.abs(reason.differenceC), unit)} ${way(reason.differenceC)} than in the recipe's trial, limit ${differenceText(reason.limitC, unit)}: not compared.`;
    case 'platen-differs':
      return `${reason.which === 'upper' ? 'Upper' : 'Lower'} platen ${differenceText(Math.abs(reason.differenceC), unit)} ${way(reason.differenceC)} than in the recipe's trial, limit ${differenceText(reason.limitC, unit)}: not compared; the recipe is to be re-proved for such platens.`;
    case 'run-not-usable':
      return `The run is ${reason.verdict}: not compared.`;
    case 'from-onset':
      return 'Timed from the onset of the rise: not compared.';
  }
}

const way = (differenceC: number): string => (differenceC > 0 ? 'hotter' : 'colder');

/** Dwell against target: a table and a picture in one, own scale for all rows. */
export function dwellTableLines(
  rows: readonly DwellAtTarget[],
  unit: TemperatureUnit,
  width = 34,
): readonly string[] {
  const known = rows.flatMap((row) =>
    [row.meanDwellS, row.toleranceDwellS, row.nextRunDwellS].filter((value) => value !== null),
  );
  if (known.length === 0) return ['No target gives a dwell.'];
  const [low, high] = [Math.min(...known), Math.max(...known)];
  const column = (valueS: number): number =>
    high === low ? 0 : Math.round(((valueS - low) / (high - low)) * (width - 1));
  const picture = (row: DwellAtTarget): string => {
    const cells: string[] = new Array(width).fill(' ');
    const ends = [row.meanDwellS, row.toleranceDwellS ?? row.nextRunDwellS]
      .filter((value) => value !== null)
      .map(column);
    for (let at = ends[0] ?? 0; ends.length === 2 && at <= (ends[1] as number); at += 1) cells[at] = '-';
    if (row.toleranceDwellS !== null) cells[column(row.toleranceDwellS)] = 'T';
    if (row.nextRunDwellS !== null) cells[column(row.nextRunDwellS)] = 'N';
    if (row.meanDwellS !== null) cells[column(row.meanDwellS)] = 'M';
    return cells.join('');
  };
  const seconds = (value: number | null): string => (value === null ? '—' : numberText(value, 0)).padStart(6);
  return [
    `Dwell against target, ${numberText(low, 0)} to ${numberText(high, 0)} s: M mean rule, N next run, T most cycles`,
    ...rows.map(
      (row) =>
        `  ${temperatureText(row.targetC, unit).padEnd(19)}|${picture(row)}|${seconds(row.meanDwellS)}${seconds(row.nextRunDwellS)}${seconds(row.toleranceDwellS)} s, ${row.runs} runs`,
    ),
  ];
}
