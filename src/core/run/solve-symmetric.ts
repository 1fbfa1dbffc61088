/**
 * Solves A·x = b for a small symmetric positive definite A (Cholesky); the inverse of A is worked out when asked for.
 * Null where A is singular to working precision.
 */
export function solveSymmetric(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): { readonly solution: number[]; readonly inverse: () => number[][] } | null {
  const size = right.length;
  const lower: number[][] = [];
  for (let row = 0; row < size; row++) {
    lower.push(new Array<number>(size).fill(0));
    for (let column = 0; column <= row; column++) {
      let sum = matrix[row]![column]!;
      for (let k = 0; k < column; k++) sum -= lower[row]![k]! * lower[column]![k]!;
      if (row === column) {
        if (!(sum > 1e-12 * Math.abs(matrix[row]![row]!))) return null;
        lower[row]![row] = Math.sqrt(sum);
      } else lower[row]![column] = sum / lower[column]![column]!;
    }
  }
  const substitute = (values: readonly number[]): number[] => {
    const x = [...values];
    for (let row = 0; row < size; row++) {
      for (let k = 0; k < row; k++) x[row]! -= lower[row]![k]! * x[k]!;
      x[row]! /= lower[row]![row]!;
    }
    for (let row = size - 1; row >= 0; row--) {
      for (let k = row + 1; k < size; k++) x[row]! -= lower[k]![row]! * x[k]!;
      x[row]! /= lower[row]![row]!;
    }
    return x;
  };
  const unit = (at: number): number[] => Array.from({ length: size }, (_, index) => (index === at ? 1 : 0));
  return {
    solution: substitute(right),
    inverse: () => Array.from({ length: size }, (_, index) => substitute(unit(index))),
  };
}
