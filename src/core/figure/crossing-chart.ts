import { FIGURE_TEXT } from '../text/report-text.ts';
import { legend } from './legend.ts';
import type { OverlayInput } from './OverlayInput.ts';
import { drawnRuns, overlayLegend, simulatedShapes, targetLine } from './overlay-parts.ts';
import type { Box, PathShape, Picture, Shape } from './Picture.ts';
import { plotFrame } from './plot-frame.ts';
import { symbolPath } from './symbol-path.ts';
import { tracePath } from './trace-path.ts';

const WIDTH = 720;
const BOX: Box = { left: 60, top: 30, width: 590, height: 220 };
const LEGEND_TOP = BOX.top + BOX.height + 46;
const ROOM_S = 3;

/** The runs close to the target, so that crossings a second apart are seen apart. Null where no counting run crossed. */
export function crossingChart(input: OverlayInput): Picture | null {
  const { targetC, unit } = input;
  const crossed = input.runs.filter(({ soakTimeS }) => soakTimeS !== null);
  const near = crossed.some(({ counts }) => counts) ? crossed.filter(({ counts }) => counts) : crossed;
  const soaks = near.flatMap(({ soakTimeS }) => soakTimeS ?? []);
  if (soaks.length === 0) return null;
  const range = { fromS: Math.min(...soaks) - ROOM_S, toS: Math.max(...soaks) + ROOM_S };
  const steepest = Math.max(0.2, ...near.flatMap(({ slopeCPerS }) => slopeCPerS ?? []));
  const riseC = (steepest * (range.toS - range.fromS)) / 2;
  const frame = plotFrame({
    box: BOX,
    ...range,
    lowC: targetC - riseC,
    highC: targetC + riseC,
    unit,
    timeTitle: FIGURE_TEXT.timeFromClosed,
  });
  const drawn = drawnRuns(input.runs);
  const names = legend(overlayLegend(drawn, input.runs), {
    left: BOX.left,
    top: LEGEND_TOP,
    width: BOX.width,
  });
  const lines = drawn.map(
    ({ run, look }): PathShape => ({
      kind: 'path',
      d: tracePath(run.points, frame, range),
      stroke: look.stroke,
      strokeWidth: look.strokeWidth,
      ...(look.dash === undefined ? {} : { dash: look.dash }),
    }),
  );
  const crossings = drawn.flatMap(({ run, look }): readonly Shape[] => {
    if (run.soakTimeS === null || look.symbol === undefined) return [];
    const x = frame.x(run.soakTimeS);
    if (x < BOX.left || x > BOX.left + BOX.width) return [];
    return [
      {
        kind: 'path',
        d: `M${x.toFixed(1)} ${frame.y(targetC).toFixed(1)}V${BOX.top + BOX.height}`,
        stroke: look.stroke,
        strokeWidth: 0.8,
      },
      symbolPath(look.symbol, { x, y: frame.y(targetC) }, { stroke: look.stroke, area: 60 }),
    ];
  });
  return {
    width: WIDTH,
    height: LEGEND_TOP + names.height + 6,
    title: FIGURE_TEXT.crossingTitle,
    description: FIGURE_TEXT.overlayDescription(input),
    shapes: [
      ...frame.shapes,
      { kind: 'clipped', box: BOX, shapes: [...targetLine(frame, BOX, targetC, unit), ...lines] },
      ...crossings,
      ...names.shapes,
      ...simulatedShapes(input.simulated, WIDTH),
    ],
  };
}
