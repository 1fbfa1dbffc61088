import { expect, it } from 'vitest';
import { levelLines } from '../../../src/core/figure/level-lines.ts';

const box = { left: 0, top: 0, width: 100, height: 100 };
const grid = (cells: number, of: (x: number, y: number) => number) =>
  Array.from({ length: cells + 1 }, (_, row) =>
    Array.from({ length: cells + 1 }, (_, column) => of(column / cells, row / cells)),
  );
const points = (d: string) =>
  [...d.matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map((match) => [Number(match[1]), Number(match[2])] as const);

it('of a plane that rises to the right the level 0.3 is the upright line at 30 %', () => {
  const found = points(
    levelLines(
      grid(8, (x) => x),
      0.3,
      box,
    ),
  );
  expect(found.length).toBeGreaterThanOrEqual(16);
  for (const [x] of found) expect(x).toBeCloseTo(30, 6);
});

// A circle about the middle, level r²: every point lies on the radius, to the square of the cell (linear interpolation).
it('of a bowl the level is a circle, to a tenth of a cell', () => {
  const found = points(
    levelLines(
      grid(40, (x, y) => (x - 0.5) ** 2 + (y - 0.5) ** 2),
      0.09,
      box,
    ),
  );
  expect(found.length).toBeGreaterThan(100);
  for (const [x, y] of found) expect(Math.abs(Math.hypot(x - 50, y - 50) - 30)).toBeLessThan(0.25);
});

it('draws nothing where the level lies outside the surface', () => {
  expect(
    levelLines(
      grid(5, (x) => x),
      2,
      box,
    ),
  ).toBe('');
});
