import { FIGURE_TEXT } from '../text/report-text.ts';
import { legend } from './legend.ts';
import type { OverlayInput } from './OverlayInput.ts';
import { drawnRuns, outsideShapes, overlayLegend, simulatedShapes, targetLine } from './overlay-parts.ts';
import type { Box, PathShape, Picture, Shape } from './Picture.ts';
import { plotFrame } from './plot-frame.ts';
import { symbolPath } from './symbol-path.ts';
import { temperatureRange } from './temperature-range.ts';
import { tracePath } from './trace-path.ts';

const WIDTH = 720;
const BOX: Box = { left: 60, top: 10, width: 590, height: 244 };
const LEGEND_TOP = BOX.top + BOX.height + 46;

/** All runs of a trial, aligned at press closed, with the target and each run's crossing. */
export function overlayChart(input: OverlayInput): Picture {
  const { runs, targetC, unit } = input;
  const times = runs.flatMap(({ points }) => [points[0]?.timeS ?? 0, points.at(-1)?.timeS ?? 0]);
  const temperatures = runs.flatMap(({ points }) => points.flatMap((point) => point.temperatureC ?? []));
  const range = { fromS: least(times, -5), toS: most(times, 60) };
  const shown = temperatureRange(temperatures, targetC);
  const frame = plotFrame({
    box: BOX,
    ...range,
    lowC: shown.lowC,
    highC: shown.highC,
    unit,
    timeTitle: FIGURE_TEXT.timeFromClosed,
  });
  const drawn = drawnRuns(runs);
  const names = legend(overlayLegend(drawn, runs), { left: BOX.left, top: LEGEND_TOP, width: BOX.width });
  const lines = drawn.map(
    ({ run, look }): PathShape => ({
      kind: 'path',
      d: tracePath(run.points, frame, range),
      stroke: look.stroke,
      strokeWidth: look.strokeWidth,
      ...(look.dash === undefined ? {} : { dash: look.dash }),
    }),
  );
  const crossings = drawn.flatMap(({ run, look }): readonly Shape[] =>
    run.soakTimeS === null || look.symbol === undefined
      ? []
      : [
          symbolPath(
            look.symbol,
            { x: frame.x(run.soakTimeS), y: frame.y(targetC) },
            { stroke: look.stroke },
          ),
        ],
  );
  return {
    width: WIDTH,
    height: LEGEND_TOP + names.height + 6,
    title: FIGURE_TEXT.overlayTitle,
    description: FIGURE_TEXT.overlayDescription(input),
    shapes: [
      ...frame.shapes,
      zeroLine(frame.x(0)),
      { kind: 'clipped', box: BOX, shapes: [...targetLine(frame, BOX, targetC, unit), ...lines] },
      ...crossings,
      ...names.shapes,
      ...outsideShapes(shown, unit, BOX),
      ...simulatedShapes(input.simulated, { right: BOX.left + BOX.width, floor: BOX.top + BOX.height }),
    ],
  };
}

function zeroLine(x: number): Shape {
  const at = Math.round(x * 10) / 10;
  return {
    kind: 'path',
    d: `M${at} ${BOX.top}v${BOX.height}`,
    stroke: '#555555',
    strokeWidth: 1,
    dash: [1, 2],
  };
}

const least = (values: readonly number[], otherwise: number): number =>
  values.reduce((lowest, value) => Math.min(lowest, value), values[0] ?? otherwise);
const most = (values: readonly number[], otherwise: number): number =>
  values.reduce((highest, value) => Math.max(highest, value), values[0] ?? otherwise);
