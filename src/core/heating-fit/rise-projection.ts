/** The straight-line part of an exponential rise at one rate. */
export interface Projection {
  readonly plateau: number;
  readonly drop: number;
  readonly squares: number;
  /** Half the slope of the squares over the rate; its zero is the least-squares rate (variable projection). */
  readonly slope: number;
}

/** Plateau and drop free: y = plateau − drop·exp(−rate·(x − origin)). Null where the rate leaves nothing to tell them apart. */
export function freeProjection(
  x: Float64Array,
  y: Float64Array,
  weights: Float64Array | null,
  origin: number,
  rate: number,
): Projection | null {
  const n = x.length;
  let [sw, se, sy, st] = [0, 0, 0, 0];
  let [see, sey, syy, ste, sty] = [0, 0, 0, 0, 0];
  const yFirst = y[0]!;
  for (let i = 0; i < n; i += 1) {
    const w = weights === null ? 1 : weights[i]!;
    const at = x[i]! - origin;
    const e = Math.exp(-rate * at);
    const value = y[i]! - yFirst;
    const te = at * e;
    sw += w;
    se += w * e;
    sy += w * value;
    st += w * te;
    see += w * e * e;
    sey += w * e * value;
    syy += w * value * value;
    ste += w * te * e;
    sty += w * te * value;
  }
  const see0 = see - (se * se) / sw;
  if (!(see0 > 1e-13 * see)) return null;
  const drop = -(sey - (se * sy) / sw) / see0;
  const plateau = (sy + drop * se) / sw;
  const squares = Math.max(0, syy - plateau * sy + drop * sey);
  // r = value − plateau + drop·e; df/drate = drop·t·e; half slope of Σ r² is −Σ r·drop·t·e.
  const slope = -drop * (sty - plateau * st + drop * ste);
  return { plateau: plateau + yFirst, drop, squares, slope };
}

/** Through a given point: y = start + rise·(1 − exp(−rate·(x − x₀))). */
export function fixedProjection(
  x: Float64Array,
  y: Float64Array,
  weights: Float64Array | null,
  through: { readonly x: number; readonly y: number },
  rate: number,
): Projection | null {
  let [sgg, sgy, syy, stg, sty] = [0, 0, 0, 0, 0];
  for (let i = 0; i < x.length; i += 1) {
    const w = weights === null ? 1 : weights[i]!;
    const at = x[i]! - through.x;
    const g = -Math.expm1(-rate * at);
    const te = at * (1 - g);
    const value = y[i]! - through.y;
    sgg += w * g * g;
    sgy += w * g * value;
    syy += w * value * value;
    stg += w * te * g;
    sty += w * te * value;
  }
  if (!(sgg > 0)) return null;
  const rise = sgy / sgg;
  return {
    plateau: rise + through.y,
    drop: rise,
    squares: Math.max(0, syy - rise * sgy),
    slope: -rise * (sty - rise * stg),
  };
}
