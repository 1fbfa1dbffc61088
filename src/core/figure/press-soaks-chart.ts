import { scaleLinear } from 'd3-scale';
import { PRESS_SOAKS_TEXT } from '../text/comparison-text.ts';
import type { TrialStatistics } from '../trial/TrialResult.ts';
import { lineLook } from './line-look.ts';
import { simulatedShapes } from './overlay-parts.ts';
import type { Picture, Shape } from './Picture.ts';
import { INK } from './picture-svg.ts';
import { plainLine } from './plain-line.ts';
import { plainText } from './plain-text.ts';
import { symbolPath } from './symbol-path.ts';
import { tenth } from './tenth.ts';

export interface PressSoaksInput {
  readonly presses: readonly {
    readonly name: string;
    readonly soakTimesS: readonly number[];
    readonly statistics: TrialStatistics;
  }[];
  /** Longest soak time that leaves the recipe's whole hold, s; null where no recipe is known. */
  readonly limitS: number | null;
  readonly simulated: boolean;
}

const WIDTH = 720;
const LEFT = 30;
const PLOT_WIDTH = 640;
const TOP = 34;
const ROW = 62;

/** Soak times of trials of one assembly on several presses, a row each: runs, mean with its 95 % interval, bound for the next run; the recipe's limit across all. */
export function pressSoaksChart({ presses, limitS, simulated }: PressSoaksInput): Picture | null {
  const values = presses.flatMap(({ soakTimesS, statistics: { meanCi95S, nextRunUpper95S } }) => [
    ...soakTimesS,
    ...(meanCi95S ?? []),
    ...(nextRunUpper95S === null ? [] : [nextRunUpper95S]),
  ]);
  if (values.length === 0) return null;
  const all = limitS === null ? values : [...values, limitS];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const room = Math.max(0.5, (high - low) * 0.06);
  const x = scaleLinear([low - room, high + room], [LEFT, LEFT + PLOT_WIDTH]);
  const floor = TOP + presses.length * ROW;
  return {
    width: WIDTH,
    height: floor + 46,
    title: PRESS_SOAKS_TEXT.title,
    description: PRESS_SOAKS_TEXT.description(
      presses.map(({ name, statistics }) => ({ name, meanS: statistics.meanSoakS })),
      limitS,
    ),
    shapes: [
      ...x
        .ticks(9)
        .flatMap((valueS): readonly Shape[] => [
          plainLine(`M${tenth(x(valueS))} ${TOP}V${floor}`, '#dcdcdc', 0.7),
          plainText(x(valueS), floor + 16, String(valueS), 'middle', 11),
        ]),
      plainLine(`M${LEFT} ${floor}h${PLOT_WIDTH}`, '#555555', 1),
      ...presses.flatMap((press, row) => rowShapes(press, TOP + row * ROW, (s) => x(s))),
      ...(limitS === null ? [] : limitShapes(limitS, x(limitS), floor)),
      plainText(LEFT + PLOT_WIDTH / 2, floor + 35, PRESS_SOAKS_TEXT.axis, 'middle', 12),
      ...simulatedShapes(simulated, { right: LEFT + PLOT_WIDTH, floor }),
    ],
  };
}

function rowShapes(
  { name, soakTimesS, statistics }: PressSoaksInput['presses'][number],
  top: number,
  x: (valueS: number) => number,
): readonly Shape[] {
  const { meanSoakS, meanCi95S, nextRunUpper95S } = statistics;
  const y = top + 40;
  return [
    {
      ...plainText(LEFT, top + 15, PRESS_SOAKS_TEXT.row(name, meanSoakS, nextRunUpper95S), 'start', 12),
      bold: true,
    },
    ...(meanCi95S === null
      ? []
      : [plainLine(`M${tenth(x(meanCi95S[0]))} ${y}H${tenth(x(meanCi95S[1]))}`, '#b5b5b5', 9)]),
    ...(meanSoakS === null ? [] : [plainLine(`M${tenth(x(meanSoakS))} ${y - 11}v22`, INK, 1.6)]),
    ...(nextRunUpper95S === null
      ? []
      : [plainLine(`M${tenth(x(nextRunUpper95S))} ${y - 11}v22m0 0h-5m5 -22h-5`, INK, 1.2)]),
    ...soakTimesS.map((soakS) => symbolPath(lineLook(0).symbol, { x: x(soakS), y }, { stroke: INK })),
  ];
}

/** The limit's name stands on the side that has room. */
function limitShapes(limitS: number, atX: number, floor: number): readonly Shape[] {
  const left = atX > LEFT + PLOT_WIDTH / 2;
  return [
    plainLine(`M${tenth(atX)} ${TOP - 6}V${floor}`, INK, 1.8),
    plainText(atX + (left ? 4 : -4), TOP - 12, PRESS_SOAKS_TEXT.limit(limitS), left ? 'end' : 'start', 12),
  ];
}
