import { leastSquaresRate } from './least-squares-rate.ts';
import { riseInverse } from './rise-inverse.ts';
import { fixedProjection, freeProjection, type Projection } from './rise-projection.ts';

/** y = plateau − drop·exp(−rate·(x − origin)), by least squares. */
export interface ExponentialRise {
  readonly plateau: number;
  readonly drop: number;
  /** 1 ÷ time constant. */
  readonly rate: number;
  /** x at which `drop` holds. */
  readonly origin: number;
  readonly squares: number;
  /** Inverse of JᵀJ for (plateau, drop, rate); times the residual variance it is their covariance. */
  readonly inverse: readonly (readonly number[])[];
}

export interface RiseOptions {
  /** Weight of each point: how many readings it stands for. Without it all count once. */
  readonly weights?: Float64Array | null;
  /** The curve starts exactly here: drop = plateau − y at origin (two parameters instead of three). */
  readonly through?: { readonly x: number; readonly y: number } | null;
  /** Where the search for the rate begins; without it the whole sensible range is looked over. */
  readonly startRate?: number | null;
}

/**
 * Least squares of an exponential rise by variable projection: for each rate the plateau and drop follow from a
 * straight line in exp(−rate·x), so only the rate is searched, as the zero of the squares' slope (bracketed, then
 * Illinois false position). Without a start the rate is looked for between 1/20 of a spacing and 20 spans; with one
 * the search walks downhill from it. Null with fewer points than parameters + 1 or when nothing brackets a minimum.
 * Source: Golub and Pereyra 1973 (variable projection); proved on the StRD sets Misra1a and BoxBOD.
 */
export function fitExponentialRise(
  x: Float64Array,
  y: Float64Array,
  { weights = null, through = null, startRate = null }: RiseOptions = {},
): ExponentialRise | null {
  const n = x.length;
  if (n < (through === null ? 4 : 3)) return null;
  const origin = through?.x ?? x[0]!;
  const project = (rate: number): Projection | null =>
    through === null
      ? freeProjection(x, y, weights, origin, rate)
      : fixedProjection(x, y, weights, through, rate);
  const rate = leastSquaresRate(x, project, startRate);
  if (rate === null) return null;
  const best = project(rate);
  if (best === null) return null;
  const inverse = riseInverse(x, weights, origin, rate, best, through !== null);
  if (inverse === null) return null;
  const { plateau, drop, squares } = best;
  return { plateau, drop, rate, origin, squares, inverse };
}
