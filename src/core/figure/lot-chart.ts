import type { ChartBandPoint } from '../chart/ChartSpec.ts';
import { LOT_TEXT } from '../text/lot-text.ts';
import { FIGURE_TEXT } from '../text/report-text.ts';
import { secondsText, type TemperatureUnit, temperatureText } from '../text/units-text.ts';
import { BAND_LOOK, bandShapes } from './band-shapes.ts';
import { type LegendEntry, legend } from './legend.ts';
import { lineLook } from './line-look.ts';
import { outsideShapes, simulatedShapes, targetLine } from './overlay-parts.ts';
import type { Box, PathShape, Picture, Shape } from './Picture.ts';
import { plotFrame } from './plot-frame.ts';
import type { TracePoint } from './RunTrace.ts';
import { temperatureRange } from './temperature-range.ts';
import { tracePath } from './trace-path.ts';

export interface LotChartInput {
  readonly cycles: readonly {
    readonly label: string;
    /** Nothing was noticed. */
    readonly clean: boolean;
    readonly points: readonly TracePoint[];
  }[];
  readonly band: readonly ChartBandPoint[];
  readonly targetC: number;
  readonly dwellS: number;
  readonly unit: TemperatureUnit;
  readonly simulated: boolean;
}

const WIDTH = 720;
const BOX: Box = { left: 60, top: 26, width: 590, height: 260 };
const LEGEND_TOP = BOX.top + BOX.height + 46;
/** More lines than this cannot be told apart: the others are grey and unnamed, those with something noticed on top. */
const MOST_NAMED = 10;
const GREY = { stroke: '#5a5a5a', strokeWidth: 0.6 } as const;

/** Bond lines of a lot's cycles from press closed, over the band of the recipe's own runs. Null where none was measured. */
export function lotChart(input: LotChartInput): Picture | null {
  const { band, targetC, dwellS, unit } = input;
  const cycles = input.cycles.filter(({ points }) => points.length > 0);
  if (cycles.length === 0) return null;
  const toS = cycles.reduce((latest, { points }) => Math.max(latest, points.at(-1)?.timeS ?? 0), dwellS);
  const range = { fromS: -10, toS };
  const within = band.filter(({ timeS }) => timeS >= range.fromS && timeS <= toS);
  const temperatures = [
    ...cycles.flatMap(({ points }) => points.flatMap(({ temperatureC }) => temperatureC ?? [])),
    ...within.flatMap(({ lowC, highC }) => [lowC, highC]),
  ];
  const shown = temperatureRange(temperatures, targetC);
  const frame = plotFrame({ box: BOX, ...range, ...shown, unit, timeTitle: FIGURE_TEXT.timeFromClosed });
  const looks = lotLooks(cycles);
  const names = legend(
    [...lotLegend(cycles), ...(within.length > 1 ? [{ text: LOT_TEXT.bandName, look: BAND_LOOK }] : [])],
    { left: BOX.left, top: LEGEND_TOP, width: BOX.width },
  );
  const lines = cycles
    .map((cycle, at) => ({ cycle, ...looks[at]! }))
    .toSorted((a, b) => Number(a.named) - Number(b.named))
    .map(
      ({ cycle, look }): PathShape => ({ kind: 'path', d: tracePath(cycle.points, frame, range), ...look }),
    );
  return {
    width: WIDTH,
    height: LEGEND_TOP + names.height + 6,
    title: LOT_TEXT.lotChartTitle,
    description: LOT_TEXT.lotChartDescription(
      cycles.length,
      temperatureText(targetC, unit),
      within.length > 1,
    ),
    shapes: [
      ...frame.shapes,
      {
        kind: 'clipped',
        box: BOX,
        shapes: [...bandShapes(within, frame), ...targetLine(frame, BOX, targetC, unit), ...lines],
      },
      ...dwellMark(frame.x(dwellS), dwellS),
      ...names.shapes,
      ...outsideShapes(shown, unit, BOX),
      ...simulatedShapes(input.simulated, { right: BOX.left + BOX.width, floor: BOX.top + BOX.height }),
    ],
  };
}

type Cycle = Pick<LotChartInput['cycles'][number], 'label' | 'clean'>;

/** A look for each cycle: of few each its own, of many only those with something noticed, the others grey. */
export function lotLooks(
  cycles: readonly Cycle[],
): readonly { readonly look: LegendEntry['look']; readonly named: boolean }[] {
  const own = (cycles.length <= MOST_NAMED ? cycles : cycles.filter(({ clean }) => !clean)).slice(
    0,
    MOST_NAMED,
  );
  return cycles.map((cycle) => {
    const at = own.indexOf(cycle);
    if (at < 0) return { look: GREY, named: false };
    const { symbol: _, ...look } = lineLook(at);
    return { look, named: true };
  });
}

/** Names of the cycles that have a look of their own, and how many others there are. */
export function lotLegend(cycles: readonly Cycle[]): readonly LegendEntry[] {
  const looks = lotLooks(cycles);
  const others = looks.filter(({ named }) => !named).length;
  return [
    ...cycles.flatMap((cycle, at) => {
      const { named, look } = looks[at]!;
      return named ? [{ text: LOT_TEXT.cycleName(cycle.label, cycle.clean), look }] : [];
    }),
    ...(others === 0 ? [] : [{ text: LOT_TEXT.furtherCycles(others), look: GREY }]),
  ];
}

function dwellMark(x: number, dwellS: number): readonly Shape[] {
  const at = Math.round(x * 10) / 10;
  return [
    {
      kind: 'path',
      d: `M${at} ${BOX.top - 6}V${BOX.top + BOX.height}`,
      stroke: '#1a1a1a',
      strokeWidth: 1,
      dash: [1, 2],
    },
    {
      kind: 'text',
      x: at,
      y: BOX.top - 10,
      text: LOT_TEXT.dwellMark(secondsText(dwellS, 3)),
      size: 11.5,
      anchor: 'middle',
    },
  ];
}
