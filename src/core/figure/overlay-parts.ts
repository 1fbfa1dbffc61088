import { FIGURE_TEXT } from '../text/report-text.ts';
import { type TemperatureUnit, temperatureText } from '../text/units-text.ts';
import type { LegendEntry } from './legend.ts';
import { LEFT_OUT_LOOK, type LineLook, lineLook } from './line-look.ts';
import type { OverlayRun } from './OverlayInput.ts';
import type { Box, PathShape, Shape, TextShape } from './Picture.ts';
import { INK } from './picture-svg.ts';
import type { PlotFrame } from './plot-frame.ts';
import type { TemperatureRange } from './temperature-range.ts';

/** More counting runs than this are drawn alike, and only the fastest and the slowest are named. */
const MOST_NAMED = 10;

type Look = Omit<LineLook, 'symbol'> & Partial<Pick<LineLook, 'symbol'>>;

export interface DrawnRun {
  readonly run: OverlayRun;
  readonly look: Look;
  readonly named: boolean;
}

/** Each run with its look; runs left out first, so that they lie below the others. */
export function drawnRuns(runs: readonly OverlayRun[]): readonly DrawnRun[] {
  const counting = runs.filter(({ counts }) => counts);
  const soaks = counting.flatMap(({ soakTimeS }) => soakTimeS ?? []);
  const many = counting.length > MOST_NAMED;
  const ends = [Math.min(...soaks), Math.max(...soaks)];
  let fastestLook = 0;
  const drawn = runs.map((run): DrawnRun => {
    if (!run.counts) return { run, look: LEFT_OUT_LOOK, named: runs.length <= 2 * MOST_NAMED };
    const named = !many || ends.includes(run.soakTimeS ?? Number.NaN);
    if (!named) return { run, look: { stroke: '#9a9a9a', strokeWidth: 0.7 }, named };
    return { run, look: lineLook(fastestLook++), named };
  });
  return drawn.toSorted((a, b) => Number(a.run.counts && a.named) - Number(b.run.counts && b.named));
}

/** Legend of the runs in their own order: number, soak time, or that it is left out. */
export function overlayLegend(
  drawn: readonly DrawnRun[],
  runs: readonly OverlayRun[],
): readonly LegendEntry[] {
  const entries = runs.flatMap((run) => {
    const found = drawn.find((one) => one.run === run);
    return found?.named ? [{ text: FIGURE_TEXT.run(run), look: found.look }] : [];
  });
  const rest = drawn.filter(({ named }) => !named);
  const look = rest[0]?.look;
  return look === undefined ? entries : [...entries, { text: FIGURE_TEXT.furtherRuns(rest.length), look }];
}

/** The target as a heavy level line with its temperature written on it. */
export function targetLine(
  frame: PlotFrame,
  box: Box,
  targetC: number,
  unit: TemperatureUnit,
): readonly (PathShape | TextShape)[] {
  const y = frame.y(targetC);
  return [
    {
      kind: 'path',
      d: `M${box.left} ${Math.round(y * 10) / 10}h${box.width}`,
      stroke: INK,
      strokeWidth: 1.6,
    },
    {
      kind: 'text',
      x: box.left + box.width - 6,
      y: y + 15,
      text: FIGURE_TEXT.target(temperatureText(targetC, unit)),
      size: 12,
      anchor: 'end',
      bold: true,
    },
  ];
}

/** The word SIMULATED at the right of the time axis' title, where readings come from no press. */
export function simulatedShapes(
  simulated: boolean,
  at: { readonly right: number; readonly floor: number },
): readonly Shape[] {
  if (!simulated) return [];
  return [
    {
      kind: 'text',
      x: at.right,
      y: at.floor + 37,
      text: FIGURE_TEXT.simulated,
      size: 17,
      anchor: 'end',
      bold: true,
      fill: '#a3161a',
    },
  ];
}

/** Says on the row of the time axis' title which readings lie outside the picture. */
export function outsideShapes(
  { below, above }: TemperatureRange,
  unit: TemperatureUnit,
  box: Box,
): readonly Shape[] {
  const ends = [below, above].flatMap((temperatureC) =>
    temperatureC === null ? [] : [temperatureText(temperatureC, unit)],
  );
  if (ends.length === 0) return [];
  const text = FIGURE_TEXT.outside(ends.join(', '));
  return [{ kind: 'text', x: box.left, y: box.top + box.height + 35, text, size: 11, anchor: 'start' }];
}
