import { symbolCross } from 'd3-shape';
import type { Box, Shape } from './Picture.ts';
import { INK } from './picture-svg.ts';
import { symbolPath } from './symbol-path.ts';

export interface LabelledSpot {
  readonly x: number;
  readonly y: number;
  /** The first in bold. */
  readonly lines: readonly string[];
}

const SIZE = 12;
const LINE = 14;
/** Width of a figure of the typeface to its size. */
const FIGURE_WIDTH = 0.53;
const APART = 8;

/** Crosses at the spots, each with its words on the side where they lie inside the box and over no others, if there is one. */
export function placeLabels(spots: readonly LabelledSpot[], box: Box): readonly Shape[] {
  const taken: Box[] = spots.map(({ x, y }) => ({ left: x - 5, top: y - 5, width: 10, height: 10 }));
  return spots.flatMap((spot, own) => {
    const others = taken.filter((_, at) => at !== own);
    const choices = sides(spot);
    const cost = ({ room }: (typeof choices)[number]) =>
      others.reduce((sum, other) => sum + shared(room, other), 0) + 4 * (area(room) - shared(room, box));
    const best = choices.reduce((least, one) => (cost(one) < cost(least) ? one : least));
    taken.push(best.room);
    return [
      symbolPath(symbolCross, spot, { stroke: INK, filled: true, area: 18 }),
      ...spot.lines.map(
        (words, at): Shape => ({
          kind: 'text',
          x: best.x,
          y: best.room.top + SIZE - 1 + at * LINE,
          text: words,
          size: SIZE,
          anchor: best.anchor,
          fill: INK,
          ...(at === 0 ? { bold: true } : {}),
        }),
      ),
    ];
  });
}

/** Right, left, above and below a spot: where its words would stand. */
function sides({ x, y, lines }: LabelledSpot) {
  const width = Math.max(...lines.map((words) => words.length)) * SIZE * FIGURE_WIDTH;
  const height = lines.length * LINE;
  const beside = y - height / 2;
  const at = (left: number, top: number) => ({ left, top, width, height });
  return [
    { x: x + APART, anchor: 'start', room: at(x + APART, beside) },
    { x: x - APART, anchor: 'end', room: at(x - APART - width, beside) },
    { x, anchor: 'middle', room: at(x - width / 2, y - APART - height) },
    { x, anchor: 'middle', room: at(x - width / 2, y + APART) },
  ] as const;
}

function shared(one: Box, other: Box): number {
  const wide = Math.min(one.left + one.width, other.left + other.width) - Math.max(one.left, other.left);
  const high = Math.min(one.top + one.height, other.top + other.height) - Math.max(one.top, other.top);
  return Math.max(0, wide) * Math.max(0, high);
}

const area = ({ width, height }: Box): number => width * height;
