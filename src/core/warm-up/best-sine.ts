/**
 * The frequency, of evenly stepped ones, whose sine and cosine take up most of the squares. Each reading's phase is turned on
 * by one step from frequency to frequency, which spares the sines and cosines.
 */
export function bestSine(
  timesS: Float64Array,
  valuesC: Float64Array,
  range: { readonly lowest: number; readonly highest: number; readonly step: number; readonly total: number },
): { best: { frequency: number; share: number }; tried: number } {
  const phase = (frequency: number, of: (x: number) => number) =>
    timesS.map((time) => of(2 * Math.PI * frequency * time));
  const cosines = phase(range.lowest, Math.cos);
  const sines = phase(range.lowest, Math.sin);
  const turnCosines = phase(range.step, Math.cos);
  const turnSines = phase(range.step, Math.sin);
  let best = { frequency: 0, share: 0 };
  let tried = 0;
  for (; range.lowest + tried * range.step <= range.highest; tried++) {
    let cc = 0;
    let cs = 0;
    let yc = 0;
    let ys = 0;
    for (let i = 0; i < timesS.length; i++) {
      const c = cosines[i]!;
      const s = sines[i]!;
      const y = valuesC[i]!;
      cc += c * c;
      cs += c * s;
      yc += y * c;
      ys += y * s;
      cosines[i] = c * turnCosines[i]! - s * turnSines[i]!;
      sines[i] = s * turnCosines[i]! + c * turnSines[i]!;
    }
    const share = takenUp(cc, timesS.length - cc, cs, yc, ys) / range.total;
    if (share > best.share) best = { frequency: range.lowest + tried * range.step, share };
  }
  return { best, tried };
}

/** Squares that a sine and cosine of this frequency take up. */
function sineShare(timesS: Float64Array, valuesC: Float64Array, frequency: number): number {
  const w = 2 * Math.PI * frequency;
  let cc = 0;
  let ss = 0;
  let cs = 0;
  let yc = 0;
  let ys = 0;
  for (let i = 0; i < timesS.length; i++) {
    const c = Math.cos(w * timesS[i]!);
    const s = Math.sin(w * timesS[i]!);
    cc += c * c;
    ss += s * s;
    cs += c * s;
    yc += valuesC[i]! * c;
    ys += valuesC[i]! * s;
  }
  return takenUp(cc, ss, cs, yc, ys);
}

/** Squares taken up by the two columns of a sine fit, from their sums of products. */
function takenUp(cc: number, ss: number, cs: number, yc: number, ys: number): number {
  const determinant = cc * ss - cs * cs;
  return determinant > 1e-9 * cc * ss ? (ss * yc * yc - 2 * cs * yc * ys + cc * ys * ys) / determinant : 0;
}

/** The frequency near this one whose sine takes up most, to 1/200 of a step. */
export function refinedSine(
  timesS: Float64Array,
  valuesC: Float64Array,
  frequency: number,
  step: number,
): number {
  let best = frequency;
  for (let width = step; width > step / 200; width /= 2) {
    for (const next of [best - width / 2, best + width / 2]) {
      if (next > 0 && sineShare(timesS, valuesC, next) > sineShare(timesS, valuesC, best)) best = next;
    }
  }
  return best;
}
