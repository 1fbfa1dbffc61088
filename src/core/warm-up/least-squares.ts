import { solveSymmetric } from '../run/solve-symmetric.ts';

/** Weights of the columns that bring rows nearest to the values (normal equations; few, well-scaled columns). Null where not told apart. */
export function leastSquares(
  rows: readonly (readonly number[])[],
  values: readonly number[],
): number[] | null {
  const size = rows[0]!.length;
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right = new Array<number>(size).fill(0);
  rows.forEach((row, i) => {
    for (let p = 0; p < size; p++) {
      right[p]! += row[p]! * values[i]!;
      for (let q = 0; q < size; q++) matrix[p]![q]! += row[p]! * row[q]!;
    }
  });
  return solveSymmetric(matrix, right)?.solution ?? null;
}
