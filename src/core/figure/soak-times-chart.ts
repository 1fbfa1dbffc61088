import { scaleLinear } from 'd3-scale';
import { FIGURE_TEXT } from '../text/report-text.ts';
import type { TrialStatistics } from '../trial/TrialResult.ts';
import { LEFT_OUT_LOOK, lineLook } from './line-look.ts';
import { simulatedShapes } from './overlay-parts.ts';
import type { Picture, Shape } from './Picture.ts';
import { INK } from './picture-svg.ts';
import { symbolPath } from './symbol-path.ts';

export interface SoakTimesInput {
  readonly runs: readonly {
    readonly label: string;
    readonly counts: boolean;
    readonly soakTimeS: number | null;
    readonly standardUncertaintyS: number | null;
  }[];
  readonly statistics: TrialStatistics;
  readonly simulated: boolean;
}

const WIDTH = 720;
const LEFT = 90;
const PLOT_WIDTH = 560;
/** A name this close to the right edge is written to the left of its line. */
const EDGE = 70;
const TOP = 48;
const ROW = 19;

/** Soak time of each run with its own standard uncertainty, the mean, its 95 % interval and the bound of the next run. */
export function soakTimesChart({ runs, statistics, simulated }: SoakTimesInput): Picture | null {
  const timed = runs.filter(({ soakTimeS }) => soakTimeS !== null);
  if (timed.length === 0 || timed.length > 40) return null;
  const { meanSoakS, meanCi95S, nextRunUpper95S } = statistics;
  const values = [
    ...timed.flatMap(({ soakTimeS, standardUncertaintyS }) => [
      (soakTimeS as number) - (standardUncertaintyS ?? 0),
      (soakTimeS as number) + (standardUncertaintyS ?? 0),
    ]),
    ...(meanCi95S ?? []),
    ...(nextRunUpper95S === null ? [] : [nextRunUpper95S]),
  ];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = Math.max(0.3, (high - low) * 0.08);
  const scale = scaleLinear([low - room, high + room], [LEFT, LEFT + PLOT_WIDTH]).nice(8);
  const x = (timeS: number) => Math.round(scale(timeS) * 10) / 10;
  const floor = TOP + timed.length * ROW + 6;
  const ticks = scale.ticks(8);
  const decimals = (ticks[1] ?? 1) - (ticks[0] ?? 0) < 0.95 ? 1 : 0;
  return {
    width: WIDTH,
    height: floor + 44,
    title: FIGURE_TEXT.soakTimesTitle,
    description: FIGURE_TEXT.soakTimesDescription(timed),
    shapes: [
      ...ticks.flatMap((timeS): readonly Shape[] => [
        { kind: 'path', d: `M${x(timeS)} ${TOP}V${floor}`, stroke: '#dcdcdc', strokeWidth: 0.7 },
        text(x(timeS), floor + 16, timeS.toFixed(decimals), 'middle', 11),
      ]),
      ...(meanCi95S === null
        ? []
        : [
            {
              kind: 'path',
              d: `M${x(meanCi95S[0])} ${TOP}V${floor}H${x(meanCi95S[1])}V${TOP}Z`,
              fill: '#e6eaee',
            } as const,
          ]),
      ...upright(meanSoakS, FIGURE_TEXT.mean, x, floor),
      ...upright(nextRunUpper95S, FIGURE_TEXT.nextRunBound, x, floor, [6, 3]),
      { kind: 'path', d: `M${LEFT} ${floor}h${PLOT_WIDTH}`, stroke: '#555555' },
      text(LEFT + PLOT_WIDTH / 2, floor + 34, FIGURE_TEXT.soakAxis, 'middle', 12),
      ...timed.flatMap((run, row) => runShapes(run, row, x)),
      ...simulatedShapes(simulated, { right: LEFT + PLOT_WIDTH, floor }),
    ],
  };
}

function runShapes(
  run: SoakTimesInput['runs'][number],
  row: number,
  x: (timeS: number) => number,
): readonly Shape[] {
  const y = TOP + row * ROW + ROW / 2 + 3;
  const soakS = run.soakTimeS as number;
  const u = run.standardUncertaintyS ?? 0;
  const stroke = run.counts ? INK : LEFT_OUT_LOOK.stroke;
  return [
    text(LEFT - 8, y + 4, FIGURE_TEXT.runName(run.label, run.counts), 'end', 12),
    {
      kind: 'path',
      d: `M${x(soakS - u)} ${y}H${x(soakS + u)}M${x(soakS - u)} ${y - 4}v8M${x(soakS + u)} ${y - 4}v8`,
      stroke,
      strokeWidth: 1.2,
    },
    symbolPath(lineLook(0).symbol, { x: x(soakS), y }, { stroke, filled: run.counts }),
  ];
}

function upright(
  timeS: number | null,
  name: (timeS: number) => string,
  x: (timeS: number) => number,
  floor: number,
  dash?: readonly number[],
): readonly Shape[] {
  if (timeS === null) return [];
  return [
    {
      kind: 'path',
      d: `M${x(timeS)} ${TOP - 8}V${floor}`,
      stroke: INK,
      strokeWidth: 1.3,
      ...(dash === undefined ? {} : { dash }),
    },
    text(
      x(timeS),
      dash === undefined ? TOP - 14 : TOP - 31,
      name(timeS),
      x(timeS) > LEFT + PLOT_WIDTH - EDGE ? 'end' : 'middle',
      12,
    ),
  ];
}

function text(x: number, y: number, words: string, anchor: 'start' | 'middle' | 'end', size: number) {
  return { kind: 'text', x, y, text: words, size, anchor, fill: INK } as const;
}
