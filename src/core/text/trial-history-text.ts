import type { ChartSignal, IndividualsChart } from '../trial-history/IndividualsChart.ts';
import { numberText } from './units-text.ts';

export const CHART_SIGNAL: Readonly<Record<ChartSignal, string>> = {
  'beyond-limit': 'outside the three-sigma limits (zone rule 1)',
  'two-of-three': 'two of three beyond two sigma on one side (zone rule 2)',
  'four-of-five': 'four of five beyond one sigma on one side (zone rule 3)',
  shift: 'eight in a row on one side of the centre: a shift (zone rule 4)',
  drift: 'six in a row rising or falling: a drift (trend rule)',
  jump: 'a jump from the trial before (moving range above its limit)',
};

const WIDTH = 41;

/** Where the rules come from, to print under a chart that shows a signal. */
export const CHART_RULES_SOURCE =
  'Zone and trend rules: NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.';

/**
 * The history of a press and assembly as a picture of text: one line a trial, oldest first, `|` at centre and
 * limits, `o` a point, `X` one with a signal (said in words beside it). Readable without colour.
 */
export function trialHistoryLines(chart: IndividualsChart): readonly string[] {
  const values = chart.points.map((point) => point.meanSoakS);
  const low = Math.min(chart.lowerLimitS, ...values);
  const span = Math.max(chart.upperLimitS, ...values) - low || 1;
  const place = (value: number) => Math.round(((value - low) / span) * (WIDTH - 1));
  const rows = chart.points.map((point) => {
    const cells = Array.from({ length: WIDTH }, () => ' ');
    for (const line of [chart.lowerLimitS, chart.centreS, chart.upperLimitS]) cells[place(line)] = '|';
    cells[place(point.meanSoakS)] = point.signals.length > 0 ? 'X' : 'o';
    const words = point.signals.map((signal) => CHART_SIGNAL[signal]).join('; ');
    return `${point.madeAt.slice(0, 10)} ${numberText(point.meanSoakS, 2).padStart(7)} s ${cells.join('')} ${words}`.trimEnd();
  });
  const firm = chart.provisional ? ` Provisional: fewer than 20 trials.` : '';
  return [
    `Centre ${numberText(chart.centreS, 2)} s, limits ${numberText(chart.lowerLimitS, 2)} to ${numberText(chart.upperLimitS, 2)} s, moving range up to ${numberText(chart.movingRangeLimitS, 2)} s.${firm}`,
    ...rows,
    ...(chart.points.some((point) => point.signals.length > 0) ? [CHART_RULES_SOURCE] : []),
  ];
}
