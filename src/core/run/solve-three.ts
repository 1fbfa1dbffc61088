/** A symmetric 3×3 matrix by its upper half: a b c / b d e / c e f. */
export interface SymmetricThree {
  readonly aa: number;
  readonly ab: number;
  readonly ac: number;
  readonly bb: number;
  readonly bc: number;
  readonly cc: number;
}

export type Three = readonly [number, number, number];

/** Solves A·x = b for a symmetric positive definite 3×3 A (Cholesky, A = L·D·Lᵀ). Null where singular to working precision. */
export function solveThree({ aa, ab, ac, bb, bc, cc }: SymmetricThree, right: Three): Three | null {
  if (!(aa > 0)) return null;
  const lba = ab / aa;
  const lca = ac / aa;
  const db = bb - lba * ab;
  if (!(db > 1e-12 * bb)) return null;
  const lcb = (bc - lca * ab) / db;
  const dc = cc - lca * ac - lcb * (bc - lca * ab);
  if (!(dc > 1e-12 * cc)) return null;
  const y0 = right[0];
  const y1 = right[1] - lba * y0;
  const y2 = right[2] - lca * y0 - lcb * y1;
  const z = y2 / dc;
  const y = y1 / db - lcb * z;
  return [y0 / aa - lba * y - lca * z, y, z];
}
