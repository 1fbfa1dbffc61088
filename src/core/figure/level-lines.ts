import type { Box } from './Picture.ts';

/**
 * Path of the lines along which a surface, known on a grid that fills the box (first row on top), has the value `level`:
 * marching squares, each cell on its own, cut points by linear interpolation along its edges.
 */
export function levelLines(grid: readonly (readonly number[])[], level: number, box: Box): string {
  const rows = grid.length - 1;
  const columns = (grid[0]?.length ?? 1) - 1;
  const [wide, high] = [box.width / columns, box.height / rows];
  const pieces: string[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const corners = [
        [column, row, grid[row]![column]!],
        [column + 1, row, grid[row]![column + 1]!],
        [column + 1, row + 1, grid[row + 1]![column + 1]!],
        [column, row + 1, grid[row + 1]![column]!],
      ] as const;
      const cuts = corners.flatMap(([x, y, value], at) => {
        const [nextX, nextY, next] = corners[(at + 1) % 4]!;
        if (value < level === next < level) return [];
        const share = (level - value) / (next - value);
        return [
          `${r(box.left + (x + (nextX - x) * share) * wide)} ${r(box.top + (y + (nextY - y) * share) * high)}`,
        ];
      });
      // Two cuts are one line; four (a saddle) are two.
      for (let at = 0; at + 1 < cuts.length; at += 2) pieces.push(`M${cuts[at]}L${cuts[at + 1]}`);
    }
  }
  return pieces.join('');
}

const r = (value: number): number => Math.round(value * 100) / 100;
