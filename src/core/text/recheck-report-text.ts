import { numberText, type TemperatureUnit } from './units-text.ts';

/** Words of the report of a re-check. */
export const RECHECK_REPORT_TEXT = {
  title: 'Re-check of a recipe',
  subtitle: (assembly: string, press: string, version: number) =>
    `Assembly ${assembly} on press ${press}, recipe version ${version}`,
  verdictHeading: 'Does the recipe still hold?',
  recipeHeading: 'The recipe',
  nowHeading: 'What these runs would suggest now',
  runsHeading: 'Runs, as stored and as analysed now',
  picturesHeading: 'Pictures',
  whatIfHeading: 'Dwell at other targets',
  recheckCaption:
    'Soak time of each run by its number in the table. Below the heavy line the recipe’s dwell leaves the whole hold; hatched: where the next run of the recipe’s own trial lies with 95 %.',
  overlayCaption:
    'Bond-line temperature of every run, counted from press closed; each mark is a crossing; runs that are not compared are grey.',
  whatIfCaption:
    'Dwell at other targets, from the same recordings analysed anew at each: mean rule and bound for the next run (95 %).',
  /** Columns. */
  made: 'Made',
  now: 'Now, s',
  stored: 'As stored',
  storedOf: (soak: string, verdict: string, ruleVersion: number) =>
    `${soak} s, ${verdict}, rules ${ruleVersion}`,
  notStored: 'not stored',
  why: 'What stands against it, and why old and new differ',
  alike: (count: number) =>
    count === 0
      ? 'No run of these was stored before: there is no old result to set beside the new one.'
      : `${count} ${count === 1 ? 'run was' : 'runs were'} stored before and gave the same soak time and verdict then: nothing has changed.`,
  differ: (count: number, of: number) =>
    `${count} of the ${of} runs that were stored before give another soak time or verdict now; each row says why.`,
  tooManyTraces: (count: number) => `${count} recordings are too many for one picture of all their runs.`,
  reProofHeading: 'To be re-proved',
  target: 'Target',
  runs: 'Runs',
  meanSoak: 'Mean soak, s',
  meanDwell: 'Dwell, mean rule, s',
  nextRunDwell: 'Dwell, next run 95 %, s',
  toleranceDwell: 'Dwell, most cycles, s',
} as const;

/** Words of its chart. */
export const RECHECK_CHART_TEXT = {
  title: 'Soak time of each run against the recipe',
  description: (runs: number, limitS: number, band: readonly [number, number] | null) =>
    `${runs} ${runs === 1 ? 'run' : 'runs'} by number; the longest soak time that leaves the whole hold is ${numberText(limitS, 2)} s${band === null ? '' : `; ${RECHECK_CHART_TEXT.band(band)}`}.`,
  kind: {
    later: 'later runs',
    own: 'runs the recipe rests on',
    apart: 'not compared',
  },
  band: ([low, high]: readonly [number, number]): string =>
    `band of the recipe (95 %), ${numberText(low, 1)} to ${numberText(high, 1)} s`,
  limit: (limitS: number) => `longest soak time with the whole hold, ${numberText(limitS, 2)} s`,
  soakAxis: 'Soak time, s',
  runAxis: 'Number of the run',
} as const;

/** Words of the chart of dwell against target. */
export const WHAT_IF_CHART_TEXT = {
  title: 'Dwell against target',
  description: (targets: number) =>
    `Dwell at ${targets} targets, from the same recordings: mean rule, next run (95 %) and most cycles.`,
  targetAxis: (unit: TemperatureUnit) => `Target at the bond line, °${unit}`,
  dwellAxis: 'Dwell, s',
  mean: 'mean rule',
  nextRun: 'next run holds fully (95 %)',
  tolerance: 'most cycles hold fully',
  between: 'between mean and next run',
} as const;
