export interface Sine {
  readonly radPerS: number;
  readonly cosine: number;
  readonly sine: number;
  /** Sum of squares left over. */
  readonly square: number;
  readonly left: Float64Array;
}

/** A cosine and a sine of a given frequency by least squares, and what they leave over; null where they are one and the same. */
export function sineBySquares(timesS: Float64Array, values: Float64Array, radPerS: number): Sine | null {
  const count = values.length;
  const fromS = timesS[0]!;
  const cosines = new Float64Array(count);
  const sines = new Float64Array(count);
  let cc = 0;
  let cs = 0;
  let ss = 0;
  let cy = 0;
  let sy = 0;
  for (let i = 0; i < count; i++) {
    const angle = radPerS * (timesS[i]! - fromS);
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    const y = values[i]!;
    cosines[i] = c;
    sines[i] = s;
    cc += c * c;
    cs += c * s;
    ss += s * s;
    cy += c * y;
    sy += s * y;
  }
  const determinant = cc * ss - cs * cs;
  if (!(determinant > 1e-9 * cc * ss)) return null;
  const cosine = (ss * cy - cs * sy) / determinant;
  const sine = (cc * sy - cs * cy) / determinant;
  const left = new Float64Array(count);
  let square = 0;
  for (let i = 0; i < count; i++) {
    const r = values[i]! - cosine * cosines[i]! - sine * sines[i]!;
    left[i] = r;
    square += r * r;
  }
  return { radPerS, cosine, sine, square, left };
}
