import { scaleLinear } from 'd3-scale';
import { LOT_TEXT } from '../text/lot-text.ts';
import { secondsText } from '../text/units-text.ts';
import { lineLook } from './line-look.ts';
import { simulatedShapes } from './overlay-parts.ts';
import type { Box, Picture, Shape } from './Picture.ts';
import { INK } from './picture-svg.ts';
import { plainText } from './plain-text.ts';
import { symbolPath } from './symbol-path.ts';
import { tenth } from './tenth.ts';

export interface HeldChartInput {
  readonly cycles: readonly {
    readonly number: number;
    readonly clean: boolean;
    readonly heldS: number;
    readonly wantedS: number;
  }[];
  readonly simulated: boolean;
}

const WIDTH = 720;
const BOX: Box = { left: 60, top: 22, width: 590, height: 130 };

/** Time closed of each cycle by its number, with the dwell wanted as a step line: steady hands, or not. */
export function heldChart({ cycles, simulated }: HeldChartInput): Picture | null {
  const [first, last] = [cycles[0], cycles.at(-1)];
  if (first === undefined || last === undefined || cycles.length < 2) return null;
  const values = cycles.flatMap(({ heldS, wantedS }) => [heldS, wantedS]);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = Math.max(1, (high - low) * 0.1);
  const y = scaleLinear([low - room, high + room], [BOX.top + BOX.height, BOX.top]);
  const x = scaleLinear([first.number - 0.5, last.number + 0.5], [BOX.left, BOX.left + BOX.width]);
  const floor = BOX.top + BOX.height;
  const numbers = x.ticks(Math.min(20, last.number - first.number + 1)).filter(Number.isInteger);
  const steps = cycles.map(
    ({ number, wantedS }) => `M${tenth(x(number - 0.5))} ${tenth(y(wantedS))}H${tenth(x(number + 0.5))}`,
  );
  return {
    width: WIDTH,
    height: floor + 44,
    title: LOT_TEXT.heldTitle,
    description: LOT_TEXT.heldDescription(cycles.length, secondsText(first.wantedS, 3)),
    shapes: [
      ...y.ticks(5).flatMap((valueS): readonly Shape[] => [
        {
          kind: 'path',
          d: `M${BOX.left} ${tenth(y(valueS))}h${BOX.width}`,
          stroke: '#dcdcdc',
          strokeWidth: 0.7,
        },
        plainText(BOX.left - 7, y(valueS) + 4, String(valueS), 'end', 11),
      ]),
      ...numbers.flatMap((number): readonly Shape[] => [
        { kind: 'path', d: `M${tenth(x(number))} ${floor}v4`, stroke: '#555555' },
        plainText(x(number), floor + 17, String(number), 'middle', 11),
      ]),
      {
        kind: 'path',
        d: `M${BOX.left} ${BOX.top}h${BOX.width}v${BOX.height}h${-BOX.width}Z`,
        stroke: '#555555',
      },
      { kind: 'path', d: steps.join(''), stroke: INK, strokeWidth: 1.6 },
      plainText(BOX.left + 4, BOX.top - 6, LOT_TEXT.dwellMark(secondsText(first.wantedS, 3)), 'start', 11.5),
      ...cycles.map(({ number, clean, heldS }) =>
        symbolPath(lineLook(0).symbol, { x: x(number), y: y(heldS) }, { stroke: INK, filled: clean }),
      ),
      { ...plainText(BOX.left - 42, BOX.top + BOX.height / 2, LOT_TEXT.heldAxis, 'middle', 12), turned: -90 },
      plainText(BOX.left + BOX.width / 2, floor + 35, LOT_TEXT.numberAxis, 'middle', 12),
      ...simulatedShapes(simulated, { right: BOX.left + BOX.width, floor }),
    ],
  };
}
