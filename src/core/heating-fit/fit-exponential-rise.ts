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

interface Projection {
  readonly plateau: number;
  readonly drop: number;
  readonly squares: number;
  /** Half the slope of the squares over the rate; its zero is the least-squares rate (variable projection). */
  readonly slope: number;
}

const GRID_STEPS = 20;
const LARGEST_STEPS = 80;

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
  const bracket = startRate === null ? gridBracket(x, project) : walkBracket(startRate, project);
  if (bracket === null) return null;
  const rate = zeroOfSlope(bracket, project);
  const best = project(rate);
  if (best === null) return null;
  const inverse = inverseNormal(x, weights, origin, rate, best, through !== null);
  if (inverse === null) return null;
  const { plateau, drop, squares } = best;
  return { plateau, drop, rate, origin, squares, inverse };
}

type Project = (rate: number) => Projection | null;

function gridBracket(x: Float64Array, project: Project): [number, number] | null {
  const span = x[x.length - 1]! - x[0]!;
  const low = Math.log(1 / (20 * span));
  const high = Math.log(20 * (x.length / span));
  const cost = (step: number) =>
    project(Math.exp(low + ((high - low) * step) / GRID_STEPS))?.squares ?? Number.POSITIVE_INFINITY;
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let step = 0; step <= GRID_STEPS; step += 1) {
    const squares = cost(step);
    if (squares < least) {
      least = squares;
      best = step;
    }
  }
  if (best <= 0 || best === GRID_STEPS) return null;
  const at = (step: number) => Math.exp(low + ((high - low) * step) / GRID_STEPS);
  return [at(best - 1), at(best + 1)];
}

/** From a start downhill by factors until the slope turns. */
function walkBracket(startRate: number, project: Project): [number, number] | null {
  const first = project(startRate);
  if (first === null || first.slope === 0) return null;
  const factor = first.slope > 0 ? 1 / 1.3 : 1.3;
  let before = startRate;
  for (let step = 0; step < LARGEST_STEPS; step += 1) {
    const next = before * factor;
    const there = project(next);
    if (there === null) return null;
    if (Math.sign(there.slope) !== Math.sign(first.slope))
      return factor > 1 ? [before, next] : [next, before];
    before = next;
  }
  return null;
}

/** Illinois false position, in the logarithm of the rate. */
function zeroOfSlope([lowRate, highRate]: [number, number], project: Project): number {
  let [a, b] = [Math.log(lowRate), Math.log(highRate)];
  let fa = project(lowRate)?.slope ?? 0;
  let fb = project(highRate)?.slope ?? 0;
  if (fa * fb > 0) return goldenSection(a, b, project);
  let side = 0;
  for (let round = 0; round < 100; round += 1) {
    const c = (fa * b - fb * a) / (fa - fb);
    const fc = project(Math.exp(c))?.slope ?? 0;
    if (fc === 0 || Math.abs(b - a) < 1e-14 * Math.max(1, Math.abs(c))) return Math.exp(c);
    if (fc * fb > 0) {
      const moved = Math.abs(c - b);
      [b, fb] = [c, fc];
      if (side === -1) fa /= 2;
      side = -1;
      if (moved < 1e-13) return Math.exp(c);
    } else {
      const moved = Math.abs(c - a);
      [a, fa] = [c, fc];
      if (side === 1) fb /= 2;
      side = 1;
      if (moved < 1e-13) return Math.exp(c);
    }
  }
  return Math.exp((a + b) / 2);
}

/** Where the slope keeps its sign between two grid steps (two dips in one): least squares by golden section. */
function goldenSection(a: number, b: number, project: Project): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  const cost = (at: number) => project(Math.exp(at))?.squares ?? Number.POSITIVE_INFINITY;
  for (let round = 0; round < 60; round += 1) {
    const [c, d] = [b - ratio * (b - a), a + ratio * (b - a)];
    if (cost(c) < cost(d)) b = d;
    else a = c;
  }
  return Math.exp((a + b) / 2);
}

function freeProjection(
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

function fixedProjection(
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

function inverseNormal(
  x: Float64Array,
  weights: Float64Array | null,
  origin: number,
  rate: number,
  { drop }: Projection,
  fixed: boolean,
): readonly (readonly number[])[] | null {
  const m = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ];
  for (let i = 0; i < x.length; i += 1) {
    const w = weights === null ? 1 : weights[i]!;
    const at = x[i]! - origin;
    const e = Math.exp(-rate * at);
    const row = fixed ? [1 - e, drop * at * e, 0] : [1, -e, drop * at * e];
    for (let a = 0; a < 3; a += 1) for (let b = 0; b < 3; b += 1) m[a]![b]! += w * row[a]! * row[b]!;
  }
  if (!fixed) return inverse3(m);
  const [[p, q], [, r]] = [m[0]!, m[1]!] as [[number, number], [number, number]];
  const determinant = p * r - q * q;
  if (!(determinant > 0)) return null;
  const [vp, vpr, vr] = [r / determinant, -q / determinant, p / determinant];
  // drop = plateau less a fixed value: they move together.
  return [
    [vp, vp, vpr],
    [vp, vp, vpr],
    [vpr, vpr, vr],
  ];
}

function inverse3(m: readonly (readonly number[])[]): readonly (readonly number[])[] | null {
  const [a, b, c] = m[0] as [number, number, number];
  const [, e, f] = m[1] as [number, number, number];
  const i = m[2]![2]!;
  const [ca, cb, cc] = [e * i - f * f, c * f - b * i, b * f - c * e];
  const determinant = a * ca + b * cb + c * cc;
  if (!(determinant > 0)) return null;
  const [ce, cf, ci] = [a * i - c * c, b * c - a * f, a * e - b * b];
  const over = (value: number) => value / determinant;
  return [
    [over(ca), over(cb), over(cc)],
    [over(cb), over(ce), over(cf)],
    [over(cc), over(cf), over(ci)],
  ];
}
