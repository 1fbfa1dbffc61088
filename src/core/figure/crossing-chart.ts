import { FIGURE_TEXT } from '../text/report-text.ts';
import { legend } from './legend.ts';
import type { OverlayInput } from './OverlayInput.ts';
import { type DrawnRun, drawnRuns, overlayLegend, simulatedShapes, targetLine } from './overlay-parts.ts';
import type { Box, PathShape, Picture, Shape } from './Picture.ts';
import { type PlotFrame, plotFrame } from './plot-frame.ts';
import { symbolPath } from './symbol-path.ts';

const WIDTH = 720;
const BOX: Box = { left: 60, top: 10, width: 590, height: 168 };
const LEGEND_TOP = BOX.top + BOX.height + 46;
const ROOM_S = 2;
/** Half-length of the line through a crossing, s. */
const TANGENT_S = 1.5;

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
  // What crosses far away (a run left out, most often) is in the overlay, not here.
  const inRange = ({ soakTimeS }: OverlayInput['runs'][number]) =>
    soakTimeS !== null && soakTimeS >= range.fromS && soakTimeS <= range.toS;
  const drawn = drawnRuns(input.runs).filter(({ run }) => inRange(run));
  const names = legend(overlayLegend(drawn, input.runs.filter(inRange)), {
    left: BOX.left,
    top: LEGEND_TOP,
    width: BOX.width,
  });
  const lines = drawn.flatMap((one): readonly PathShape[] => [
    dots(one, frame, range),
    ...tangent(one, frame, targetC),
  ]);
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
      ...simulatedShapes(input.simulated, { right: BOX.left + BOX.width, floor: BOX.top + BOX.height }),
    ],
  };
}

/** Readings as small squares. */
function dots(
  { run, look }: DrawnRun,
  frame: PlotFrame,
  range: { readonly fromS: number; readonly toS: number },
): PathShape {
  const d = run.points.flatMap(({ timeS, temperatureC }) =>
    temperatureC === null || timeS < range.fromS || timeS > range.toS
      ? []
      : [`M${(frame.x(timeS) - 0.8).toFixed(1)} ${(frame.y(temperatureC) - 0.8).toFixed(1)}h1.6v1.6h-1.6Z`],
  );
  return { kind: 'path', d: d.join(''), fill: look.stroke };
}

/** The heating rate found at a run's crossing, as a line through it. */
function tangent({ run, look }: DrawnRun, frame: PlotFrame, targetC: number): readonly PathShape[] {
  const { soakTimeS, slopeCPerS } = run;
  if (soakTimeS === null || slopeCPerS === null) return [];
  const at = (aheadS: number) =>
    `${frame.x(soakTimeS + aheadS).toFixed(1)} ${frame.y(targetC + slopeCPerS * aheadS).toFixed(1)}`;
  return [
    {
      kind: 'path',
      d: `M${at(-TANGENT_S)}L${at(TANGENT_S)}`,
      stroke: look.stroke,
      strokeWidth: look.strokeWidth,
      ...(look.dash === undefined ? {} : { dash: look.dash }),
    },
  ];
}
