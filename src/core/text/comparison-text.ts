import type { TrialComparison } from '../press-comparison/compare-trials.ts';
import type { ComparedFigure, WarmUpComparison } from '../press-comparison/WarmUpComparison.ts';
import type { FigureKind } from '../warm-up/warm-up-figures.ts';
import { equivalenceText, oneTrialPerPressText, recipeCoverText, type TwoPresses } from './transfer-text.ts';
import { numberText, secondsText, type TemperatureUnit } from './units-text.ts';
import { cautionTexts, FIGURE_NAMES, tableLines } from './warm-up-text.ts';

/** Words of the chart of soak times on several presses. */
export const PRESS_SOAKS_TEXT = {
  title: 'Soak times of one assembly on two presses',
  description: (
    presses: readonly { readonly name: string; readonly meanS: number | null }[],
    limitS: number | null,
  ) =>
    `${presses.map(({ name, meanS }) => `${name}: mean ${numberText(meanS, 2)} s`).join('; ')}${limitS === null ? '' : `; ${PRESS_SOAKS_TEXT.limit(limitS)}`}.`,
  row: (name: string, meanS: number | null, nextRunS: number | null) =>
    `${name}${meanS === null ? '' : `: mean ${numberText(meanS, 2)} s`}${nextRunS === null ? '' : `, next run below ${numberText(nextRunS, 2)} s (95 %)`}`,
  limit: (limitS: number): string => `longest soak time with the whole hold, ${numberText(limitS, 2)} s`,
  axis: 'Soak time, s',
  caption:
    'Circles: runs that count. Upright line: their mean, grey bar its 95 % interval; bracket: bound for the next run (95 %). Heavy line: beyond it the recipe’s dwell leaves less than the whole hold.',
} as const;

/** Figures in one unit, so that columns stay narrow; the unit stands with the name. */
const UNITS: Readonly<Record<FigureKind, Readonly<Record<TemperatureUnit, string>>>> = {
  time: { F: 's', C: 's' },
  temperature: { F: '°F', C: '°C' },
  difference: { F: '°F', C: '°C' },
  rate: { F: '°F/s', C: '°C/s' },
  drift: { F: '°F/h', C: '°C/h' },
  percent: { F: '%', C: '%' },
};

/** Two presses by their warm-ups: a table a platen, side by side, the differences that stand out, cautions. */
export function warmUpComparisonLines(
  comparison: WarmUpComparison,
  unit: TemperatureUnit,
): readonly string[] {
  const { first, second, figures } = comparison;
  const roles = [...new Set(figures.map((figure) => figure.role))];
  return [
    `First: ${first.name}, ${countText(first.warmUps.length)}. Second: ${second.name}, ${countText(second.warmUps.length)}. Means; difference = second less first.`,
    ...roles.flatMap((role) => [
      '',
      ...tableLines([
        [role.replace('-', ' '), first.name, second.name, 'difference', '95 % interval', ''],
        ...figures
          .filter((figure) => figure.role === role)
          .map((figure) => comparedFigureCells(figure, unit)),
      ]),
    ]),
    '',
    ...(roles.length === 0 ? ['No platen was recorded on both sides.'] : []),
    ...comparisonRemarks(comparison),
  ];
}

/** One figure in six cells: name with unit, both means, difference, its interval, whether it stands out. */
export function comparedFigureCells(figure: ComparedFigure, unit: TemperatureUnit): readonly string[] {
  return [
    `${FIGURE_NAMES[figure.key] ?? figure.key}, ${UNITS[figure.kind][unit]}`,
    meanText(figure.firstMean, figure.first, figure.kind, unit),
    meanText(figure.secondMean, figure.second, figure.kind, unit),
    signedText(figure.difference, figure.kind, unit),
    intervalText(figure, unit),
    figure.standsOut ? 'stands out' : '',
  ];
}

/** What the intervals hold, what does not compare, and the cautions of the warm-ups. */
export function comparisonRemarks({
  first,
  second,
  repeated,
  rulesDiffer,
}: WarmUpComparison): readonly string[] {
  return [
    repeated
      ? 'Intervals hold the spread from warm-up to warm-up (Welch). Of twenty intervals about one leaves out the true difference by chance.'
      : 'One warm-up on a side has no spread of its own: no interval is told. Record two or more on each.',
    ...(rulesDiffer
      ? [
          'Note: set points or bands differ between the recordings; READY and times to the band do not compare.',
        ]
      : []),
    ...cautionTexts([...new Set([...first.warmUps, ...second.warmUps].flatMap((one) => one.cautions))]),
  ];
}

/** Two presses by trials of one assembly: soak times, difference, does the recipe cover, are they alike. */
export function trialComparisonLines(
  comparison: TrialComparison,
  presses: TwoPresses,
  unit: TemperatureUnit,
): readonly string[] {
  const { first, second, difference, equivalence, cover } = comparison;
  return [
    ...tableLines([
      ['soak time', presses.first, presses.second],
      ['runs that count', String(first.runs), String(second.runs)],
      ['mean', seconds(first.meanSoakS), seconds(second.meanSoakS)],
      ['standard deviation', seconds(first.sdSoakS), seconds(second.sdSoakS)],
      ['next run below (95 %)', seconds(first.nextRunUpper95S), seconds(second.nextRunUpper95S)],
    ]),
    '',
    difference === null
      ? 'Difference: not told; two runs that count are needed on each press.'
      : `${presses.second} less ${presses.first}: ${signedText(difference.difference, 'time', unit)} s, 95 % interval ${signedText(difference.low, 'time', unit)} to ${signedText(difference.high, 'time', unit)} s.`,
    cover === null
      ? 'Does the recipe cover the second press? Not asked: give --dwell, or accept a recipe for the first press.'
      : recipeCoverText(cover, presses.second, unit),
    equivalence === null
      ? 'Are the presses alike? Not asked: state --slower and --faster before you look at the second press’s runs.'
      : equivalenceText(equivalence, presses),
    oneTrialPerPressText(presses),
  ];
}

function intervalText({ interval, kind }: ComparedFigure, unit: TemperatureUnit): string {
  if (interval === null) return '—';
  return `${signedText(interval.low, kind, unit)} to ${signedText(interval.high, kind, unit)}`;
}

/** A mean, and of how many warm-ups where not all tell the figure. */
function meanText(
  mean: number | null,
  values: readonly (number | null)[],
  kind: FigureKind,
  unit: TemperatureUnit,
): string {
  const told = values.filter((value) => value !== null).length;
  const text = valueText(mean, kind, unit);
  return told === values.length || values.length === 1 ? text : `${text} (${told} of ${values.length})`;
}

function valueText(value: number | null, kind: FigureKind, unit: TemperatureUnit): string {
  if (value === null) return '—';
  const shown = kind === 'temperature' && unit === 'F' ? value * 1.8 + 32 : scaled(value, kind, unit);
  return numberText(shown, decimals(kind));
}

function signedText(value: number | null, kind: FigureKind, unit: TemperatureUnit): string {
  if (value === null) return '—';
  const text = numberText(Math.abs(scaled(value, kind, unit)), decimals(kind));
  return Number(text) === 0 ? text : `${value < 0 ? '−' : '+'}${text}`;
}

/** Differences and rates: no + 32. */
function scaled(value: number, kind: FigureKind, unit: TemperatureUnit): number {
  return unit === 'F' && kind !== 'time' && kind !== 'percent' ? value * 1.8 : value;
}

function decimals(kind: FigureKind): number {
  return kind === 'rate' ? 3 : kind === 'drift' ? 2 : 1;
}

function seconds(value: number | null): string {
  return value === null ? '—' : secondsText(value);
}

function countText(warmUps: number): string {
  return warmUps === 1 ? 'one warm-up' : `${warmUps} warm-ups`;
}
