import { scaleLinear } from 'd3-scale';
import { bandAt } from '../bonding/band-at.ts';
import { LOT_TEXT } from '../text/lot-text.ts';
import { FIGURE_TEXT } from '../text/report-text.ts';
import { differenceCToF } from '../units/difference-c-to-f.ts';
import { BAND_LOOK, bandShapes } from './band-shapes.ts';
import { legend } from './legend.ts';
import { type LotChartInput, lotLegend, lotLooks } from './lot-chart.ts';
import { simulatedShapes } from './overlay-parts.ts';
import type { Box, PathShape, Picture, Shape } from './Picture.ts';
import { plainLine } from './plain-line.ts';
import { plainText } from './plain-text.ts';
import type { PlotFrame } from './plot-frame.ts';
import type { TracePoint } from './RunTrace.ts';
import { tenth } from './tenth.ts';
import { tracePath } from './trace-path.ts';

const WIDTH = 720;
const BOX: Box = { left: 60, top: 12, width: 590, height: 190 };
const FLOOR = BOX.top + BOX.height;
/** Differences are shown to this on both sides at least, °C: the allowed one of 10 °F. */
const LEAST_C = 10 / 1.8;
/** Readings are averaged over this, s: what the cycles' watch over the band counts as together. */
const MEAN_S = 2;

/**
 * Bond line of each cycle less the middle of the recipe's own runs at the same time: what the eye cannot tell on curves
 * that rise by 200 °C. From press closed to the dwell. Null without a band or a cycle measured.
 */
export function lotDifferenceChart(input: LotChartInput): Picture | null {
  const { band, dwellS, unit } = input;
  const cycles = input.cycles.flatMap((cycle) => {
    const points = differences(cycle.points, input);
    return points.some(({ temperatureC }) => temperatureC !== null) ? [{ ...cycle, points }] : [];
  });
  const edges = band
    .filter(({ timeS }) => timeS >= 0 && timeS <= dwellS)
    .map(({ timeS, lowC, highC }) => ({ timeS, lowC: (lowC - highC) / 2, highC: (highC - lowC) / 2 }));
  if (cycles.length === 0 || edges.length < 2) return null;
  const farthest = Math.max(
    LEAST_C,
    ...cycles.map(({ points }) =>
      points.reduce((most, one) => Math.max(most, Math.abs(one.temperatureC ?? 0)), 0),
    ),
    ...edges.map(({ highC }) => highC),
  );
  const x = scaleLinear([0, dwellS], [BOX.left, BOX.left + BOX.width]);
  const y = scaleLinear([-farthest * 1.06, farthest * 1.06], [FLOOR, BOX.top]);
  const frame: PlotFrame = { x: (timeS) => x(timeS), y: (differenceC) => y(differenceC), shapes: [] };
  const looks = lotLooks(cycles);
  const names = legend([...lotLegend(cycles), { text: LOT_TEXT.bandName, look: BAND_LOOK }], {
    left: BOX.left,
    top: FLOOR + 46,
    width: BOX.width,
  });
  const lines = cycles
    .map((cycle, at) => ({ cycle, ...looks[at]! }))
    .toSorted((a, b) => Number(a.named) - Number(b.named))
    .map(
      ({ cycle, look }): PathShape => ({
        kind: 'path',
        d: tracePath(cycle.points, frame, { fromS: 0, toS: dwellS }),
        ...look,
      }),
    );
  const shown = (c: number) => (unit === 'F' ? differenceCToF(c) : c);
  return {
    width: WIDTH,
    height: FLOOR + 46 + names.height + 6,
    title: LOT_TEXT.differenceTitle,
    description: LOT_TEXT.differenceDescription(cycles.length),
    shapes: [
      ...scaleLinear([shown(-farthest * 1.06), shown(farthest * 1.06)], [FLOOR, BOX.top])
        .ticks(7)
        .flatMap((value): readonly Shape[] => {
          const at = y(unit === 'F' ? value / 1.8 : value);
          return [
            plainLine(`M${BOX.left} ${tenth(at)}h${BOX.width}`, '#dcdcdc', 0.7),
            plainText(BOX.left - 7, at + 4, LOT_TEXT.signed(value), 'end', 11),
          ];
        }),
      ...x
        .ticks(10)
        .flatMap((timeS): readonly Shape[] => [
          plainLine(`M${tenth(x(timeS))} ${FLOOR}v4`, '#555555', 1),
          plainText(x(timeS), FLOOR + 17, String(timeS), 'middle', 11),
        ]),
      { kind: 'clipped', box: BOX, shapes: [...bandShapes(edges, frame), ...lines] },
      plainLine(`M${BOX.left} ${tenth(y(0))}h${BOX.width}`, '#555555', 1),
      plainLine(`M${BOX.left} ${BOX.top}h${BOX.width}v${BOX.height}h${-BOX.width}Z`, '#555555', 1),
      {
        ...plainText(BOX.left - 42, BOX.top + BOX.height / 2, LOT_TEXT.differenceAxis(unit), 'middle', 12),
        turned: -90,
      },
      plainText(BOX.left + BOX.width / 2, FLOOR + 35, FIGURE_TEXT.timeFromClosed, 'middle', 12),
      ...names.shapes,
      ...simulatedShapes(input.simulated, { right: BOX.left + BOX.width, floor: FLOOR }),
    ],
  };
}

/** A cycle less the middle of the band, °C, as means over `MEAN_S`; where there is no band or no reading, nothing. */
function differences(points: readonly TracePoint[], { band, dwellS }: LotChartInput): readonly TracePoint[] {
  const sums = Array.from({ length: Math.ceil(dwellS / MEAN_S) }, () => ({ sum: 0, count: 0 }));
  for (const { timeS, temperatureC } of points) {
    const slot = sums[Math.floor(timeS / MEAN_S)];
    const own = bandAt(band, timeS);
    if (slot === undefined || own === null || temperatureC === null) continue;
    slot.sum += temperatureC - (own.lowC + own.highC) / 2;
    slot.count += 1;
  }
  return sums.map(({ sum, count }, at) => ({
    timeS: (at + 0.5) * MEAN_S,
    temperatureC: count === 0 ? null : sum / count,
  }));
}
