import type { ClosingSource } from '../run/RunResult.ts';
import { FIGURE_TEXT } from '../text/report-text.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import { legend } from './legend.ts';
import { lineLook } from './line-look.ts';
import { outsideShapes, simulatedShapes, targetLine } from './overlay-parts.ts';
import type { Box, PathShape, Picture, Shape } from './Picture.ts';
import { INK } from './picture-svg.ts';
import { type PlotFrame, plotFrame } from './plot-frame.ts';
import type { RunTrace } from './RunTrace.ts';
import { symbolPath } from './symbol-path.ts';
import { temperatureRange } from './temperature-range.ts';
import { tracePath } from './trace-path.ts';

export interface RunChartInput {
  readonly trace: RunTrace;
  readonly targetC: number;
  readonly unit: TemperatureUnit;
  readonly simulated: boolean;
  /** How press closed is known; null where it is not: then times count from the first reading. */
  readonly closedBy: ClosingSource | null;
  /** Moments of the run, s from press closed; null = not known. */
  readonly crossingS: number | null;
  readonly holdDoneS: number | null;
  readonly openedS: number | null;
}

const WIDTH = 720;
const BOX: Box = { left: 60, top: 46, width: 590, height: 300 };
const LEGEND_TOP = BOX.top + BOX.height + 46;

/** One run with all its channels: bond line, edges and platens, target, crossing, hold and opening. */
export function runChart(input: RunChartInput): Picture {
  const channels = input.trace.channels.filter(({ role, points }) => role !== 'unused' && points.length > 0);
  const points = channels.flatMap((channel) => channel.points);
  const shown = temperatureRange(
    points.flatMap(({ temperatureC }) => temperatureC ?? []),
    input.targetC,
  );
  const [fromS, untilS] = extent(points.map(({ timeS }) => timeS));
  const toS = Math.max(untilS, fromS + 1);
  const frame = plotFrame({
    box: BOX,
    fromS,
    toS,
    lowC: shown.lowC,
    highC: shown.highC,
    unit: input.unit,
    timeTitle: input.closedBy !== null ? FIGURE_TEXT.timeFromClosed : FIGURE_TEXT.timeFromFirstReading,
  });
  const lines = channels.map((channel, index): PathShape => {
    const { stroke, strokeWidth, dash } = lineLook(index);
    const d = tracePath(channel.points, frame, { fromS, toS });
    return { kind: 'path', d, stroke, strokeWidth, ...(dash === undefined ? {} : { dash }) };
  });
  const entries = channels.map((channel, index) => {
    const { symbol: _, ...look } = lineLook(index);
    return { text: FIGURE_TEXT.channel(channel.role, channel.channel), look };
  });
  const names = legend(entries, { left: BOX.left, top: LEGEND_TOP, width: BOX.width });
  return {
    width: WIDTH,
    height: LEGEND_TOP + names.height + 6,
    title: FIGURE_TEXT.runTitle(input.trace.label),
    description: FIGURE_TEXT.runDescription(input),
    shapes: [
      ...frame.shapes,
      ...holdShapes(input, frame),
      { kind: 'clipped', box: BOX, shapes: [...targetLine(frame, BOX, input.targetC, input.unit), ...lines] },
      ...momentShapes(input, frame),
      ...names.shapes,
      ...outsideShapes(shown, input.unit, BOX),
      ...simulatedShapes(input.simulated, { right: BOX.left + BOX.width, floor: BOX.top + BOX.height }),
    ],
  };
}

/** The hold as a light band from crossing to its end. */
function holdShapes({ crossingS, holdDoneS }: RunChartInput, frame: PlotFrame): readonly Shape[] {
  if (crossingS === null || holdDoneS === null) return [];
  const from = frame.x(crossingS).toFixed(1);
  return [
    {
      kind: 'path',
      d: `M${from} ${BOX.top}V${BOX.top + BOX.height}H${frame.x(holdDoneS).toFixed(1)}V${BOX.top}Z`,
      fill: '#eeeeee',
    },
  ];
}

/** Upright lines at press closed, crossing, hold done and opened, each with its name above the plot, in two rows. */
function momentShapes(input: RunChartInput, frame: PlotFrame): readonly Shape[] {
  const { crossingS, holdDoneS, openedS, closedBy } = input;
  const moments = [
    ...(closedBy === null ? [] : [{ timeS: 0, text: FIGURE_TEXT.closed(closedBy) }]),
    ...(crossingS === null ? [] : [{ timeS: crossingS, text: FIGURE_TEXT.crossingAt(crossingS) }]),
    ...(holdDoneS === null ? [] : [{ timeS: holdDoneS, text: FIGURE_TEXT.holdDone }]),
    ...(openedS === null ? [] : [{ timeS: openedS, text: FIGURE_TEXT.openedAt(openedS) }]),
  ];
  const crossing: readonly Shape[] =
    crossingS === null
      ? []
      : [
          symbolPath(
            lineLook(0).symbol,
            { x: frame.x(crossingS), y: frame.y(input.targetC) },
            { stroke: INK },
          ),
        ];
  return [
    ...moments.flatMap(({ timeS, text }, index): readonly Shape[] => {
      const x = Math.round(frame.x(timeS) * 10) / 10;
      const y = BOX.top - 6 - (index % 2) * 15;
      return [
        {
          kind: 'path',
          d: `M${x} ${y + 2}V${BOX.top + BOX.height}`,
          stroke: '#555555',
          strokeWidth: 0.9,
          dash: [1, 2],
        },
        {
          kind: 'text',
          x,
          y,
          text,
          size: 11.5,
          anchor: timeS === 0 ? 'start' : x > BOX.left + BOX.width - 50 ? 'end' : 'middle',
        },
      ];
    }),
    ...crossing,
  ];
}

function extent(values: readonly number[]): readonly [number, number] {
  let lowest = values[0] ?? 0;
  let highest = lowest;
  for (const value of values) {
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  return [lowest, highest];
}
