import type { LineLook } from './line-look.ts';
import type { Box, Shape } from './Picture.ts';
import { symbolPath } from './symbol-path.ts';

export interface LegendEntry {
  readonly text: string;
  /** A width of 0 draws the symbol alone. */
  readonly look: Omit<LineLook, 'symbol'> & Partial<Pick<LineLook, 'symbol'>> & { readonly filled?: boolean };
}

const ROW_HEIGHT = 17;
const SAMPLE_WIDTH = 30;
const SIZE = 12;

/** Rows of line samples with their names, below the plot; wraps to as many rows as the width needs. */
export function legend(
  entries: readonly LegendEntry[],
  at: Pick<Box, 'left' | 'top' | 'width'>,
): { readonly shapes: readonly Shape[]; readonly height: number } {
  const widest = Math.max(0, ...entries.map(({ text }) => text.length * SIZE * 0.47)) + SAMPLE_WIDTH + 16;
  const perRow = Math.max(1, Math.min(entries.length, Math.floor(at.width / widest)));
  const shapes = entries.flatMap((entry, index): readonly Shape[] => {
    const x = at.left + (index % perRow) * (at.width / perRow);
    const y = at.top + Math.floor(index / perRow) * ROW_HEIGHT + ROW_HEIGHT / 2;
    return sample(entry, x, y);
  });
  return { shapes, height: Math.ceil(entries.length / perRow) * ROW_HEIGHT };
}

function sample({ text, look }: LegendEntry, x: number, y: number): readonly Shape[] {
  return [
    ...(look.strokeWidth === 0
      ? []
      : [
          {
            kind: 'path',
            d: `M${x} ${y}h${SAMPLE_WIDTH}`,
            stroke: look.stroke,
            strokeWidth: look.strokeWidth,
            ...(look.dash === undefined ? {} : { dash: look.dash }),
          } as const,
        ]),
    ...(look.symbol === undefined
      ? []
      : [
          symbolPath(
            look.symbol,
            { x: x + SAMPLE_WIDTH / 2, y },
            { stroke: look.stroke, filled: look.filled ?? false },
          ),
        ]),
    { kind: 'text', x: x + SAMPLE_WIDTH + 7, y: y + 4, text, size: SIZE, anchor: 'start' },
  ];
}
