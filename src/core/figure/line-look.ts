import {
  type SymbolType,
  symbolCircle,
  symbolCross,
  symbolDiamond,
  symbolSquare,
  symbolTriangle,
} from 'd3-shape';

/** How one run or channel is drawn: told apart by dash and symbol where there is no colour. */
export interface LineLook {
  readonly stroke: string;
  readonly strokeWidth: number;
  readonly dash?: readonly number[];
  readonly symbol: SymbolType;
}

const STROKES = ['#17406d', '#a34e00', '#1a6b4a', '#7b2d62', '#4d4d4d'] as const;
const DASHES = [undefined, [7, 3], [2, 2.5], [10, 3, 2, 3], [4, 2]] as const;
const SYMBOLS = [symbolCircle, symbolSquare, symbolTriangle, symbolDiamond, symbolCross] as const;

/** Look of line number `index` (from 0); after 25 they come again. */
export function lineLook(index: number): LineLook {
  const dash = DASHES[(index + Math.floor(index / 5)) % 5];
  return {
    stroke: STROKES[index % 5] as string,
    strokeWidth: 1.5,
    symbol: SYMBOLS[index % 5] as SymbolType,
    ...(dash === undefined ? {} : { dash }),
  };
}

/** Runs that do not count: thin, grey, dotted. */
export const LEFT_OUT_LOOK: Omit<LineLook, 'symbol'> = {
  stroke: '#8a8a8a',
  strokeWidth: 1,
  dash: [1.5, 2.5],
};
