import type { Projection } from './rise-projection.ts';

/** Inverse of JᵀJ for (plateau, drop, rate) at the least squares; null where the points do not settle them. */
export function riseInverse(
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
