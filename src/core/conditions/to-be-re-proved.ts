import type { Recipe } from '../recipe/Recipe.ts';

/** Platens farther from those of the trial ask for a new proof, °C (9 °F: about 2.7 s of soak time). Common practice, no source. */
export const REPROVE_LIMIT_C = 5;

export interface ReProof {
  /** What moved farthest: now less then, a difference in °C. */
  readonly movedC: number;
  readonly which: 'upper' | 'lower';
  /** Measured at closings, or set points where none was measured then and now. */
  readonly by: 'measured' | 'set-point';
  readonly limitC: number;
}

type Pair = { readonly upper: number | null; readonly lower: number | null } | null;

/**
 * Whether a recipe is to be re-proved because the press's platens have moved since its trial, and by how much.
 * Measured platens are compared with measured ones, set points with set points, never one with the other.
 * Null where they stayed inside the limit or nothing can be compared.
 */
export function toBeReProved(
  recipe: Pick<Recipe, 'platenMeasuredC' | 'platenSetPointC'>,
  now: { readonly measuredC: Pair; readonly setPointC: Pair },
  limitC: number = REPROVE_LIMIT_C,
): ReProof | null {
  const moved = [
    ...moves(recipe.platenMeasuredC, now.measuredC, 'measured'),
    ...moves(recipe.platenSetPointC, now.setPointC, 'set-point'),
  ].sort((a, b) => Math.abs(b.movedC) - Math.abs(a.movedC));
  const farthest = moved[0];
  return farthest === undefined || Math.abs(farthest.movedC) <= limitC ? null : { ...farthest, limitC };
}

function moves(then: Pair, now: Pair, by: ReProof['by']): readonly Omit<ReProof, 'limitC'>[] {
  return (['upper', 'lower'] as const).flatMap((which) => {
    const [before, after] = [then?.[which] ?? null, now?.[which] ?? null];
    return before === null || after === null ? [] : [{ movedC: after - before, which, by }];
  });
}
