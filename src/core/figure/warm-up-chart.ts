import type { AlignedSeries } from '../press-comparison/aligned-series.ts';
import { FIGURE_TEXT } from '../text/report-text.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import { legend } from './legend.ts';
import { type LineLook, lineLook } from './line-look.ts';
import { simulatedShapes } from './overlay-parts.ts';
import type { Box, PathShape, Picture } from './Picture.ts';
import { plotFrame } from './plot-frame.ts';
import { temperatureRange } from './temperature-range.ts';
import { tracePath } from './trace-path.ts';

export interface WarmUpChartInput {
  readonly series: readonly AlignedSeries[];
  readonly names: { readonly first: string; readonly second: string };
  readonly unit: TemperatureUnit;
  readonly simulated: boolean;
}

const WIDTH = 720;
const BOX: Box = { left: 60, top: 10, width: 590, height: 280 };
const LEGEND_TOP = BOX.top + BOX.height + 46;

/** Warm-ups of two presses aligned at power-on: a look for each press and platen, every warm-up drawn. */
export function warmUpChart({ series, names, unit, simulated }: WarmUpChartInput): Picture {
  const looks = new Map<string, Omit<LineLook, 'symbol'> & { readonly text: string }>();
  const lookOf = ({ side, role }: AlignedSeries) => {
    const key = `${side} ${role}`;
    const { stroke, strokeWidth, dash } = lineLook(looks.size);
    const look = looks.get(key) ?? {
      text: FIGURE_TEXT.platenOf(names[side], role),
      stroke,
      strokeWidth,
      ...(dash === undefined ? {} : { dash }),
    };
    looks.set(key, look);
    return look;
  };
  // In minutes: a warm-up takes an hour.
  const lines = series.map((one) => ({
    look: lookOf(one),
    points: one.points.map(({ timeS, temperatureC }) => ({ timeS: timeS / 60, temperatureC })),
  }));
  const points = lines.flatMap((line) => line.points);
  const temperatures = points.map(({ temperatureC }) => temperatureC);
  const shown = temperatureRange(temperatures, temperatures[0] ?? 20);
  const range = { fromS: 0, toS: points.reduce((latest, { timeS }) => Math.max(latest, timeS), 1) };
  const frame = plotFrame({ box: BOX, ...range, ...shown, unit, timeTitle: FIGURE_TEXT.minutesFromPowerOn });
  const rows = legend(
    [...looks.values()].map(({ text, ...look }) => ({ text, look })),
    { left: BOX.left, top: LEGEND_TOP, width: BOX.width },
  );
  return {
    width: WIDTH,
    height: LEGEND_TOP + rows.height + 6,
    title: FIGURE_TEXT.warmUpTitle,
    description: FIGURE_TEXT.warmUpDescription([...looks.values()].map(({ text }) => text)),
    shapes: [
      ...frame.shapes,
      {
        kind: 'clipped',
        box: BOX,
        shapes: lines.map(
          ({ look: { text: _, ...look }, points: own }): PathShape => ({
            kind: 'path',
            d: tracePath(own, frame, range),
            ...look,
          }),
        ),
      },
      ...rows.shapes,
      ...simulatedShapes(simulated, { right: BOX.left + BOX.width, floor: BOX.top + BOX.height }),
    ],
  };
}
