import { type SymbolType, symbol } from 'd3-shape';
import type { PathShape } from './Picture.ts';

/** A mark on a line, filled with white or with the line's own colour. */
export function symbolPath(
  type: SymbolType,
  at: { readonly x: number; readonly y: number },
  {
    stroke,
    filled = false,
    area = 44,
  }: { readonly stroke: string; readonly filled?: boolean; readonly area?: number },
): PathShape {
  return {
    kind: 'path',
    d: moved(symbol(type, area).digits(2)() ?? '', at),
    stroke,
    strokeWidth: 1.4,
    fill: filled ? stroke : '#ffffff',
  };
}

/** Path data moved by an offset: absolute commands only gain it (M, L, A, Z; relative ones stay). */
function moved(d: string, { x, y }: { readonly x: number; readonly y: number }): string {
  return d.replace(/([MLAHV])([^A-Za-z]*)/g, (_, command: string, numbers: string) => {
    const values = numbers
      .split(/[\s,]+/)
      .filter(Boolean)
      .map(Number);
    return (
      command +
      shifted(command, values, x, y)
        .map((value) => Math.round(value * 100) / 100)
        .join(' ')
    );
  });
}

function shifted(command: string, values: readonly number[], x: number, y: number): readonly number[] {
  if (command === 'H') return values.map((value) => value + x);
  if (command === 'V') return values.map((value) => value + y);
  if (command === 'A') return [...values.slice(0, 5), (values[5] ?? 0) + x, (values[6] ?? 0) + y];
  return values.map((value, index) => value + (index % 2 === 0 ? x : y));
}
