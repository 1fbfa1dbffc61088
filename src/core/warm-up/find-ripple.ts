import type { Samples } from '../run/collect-samples.ts';
import { solveSymmetric } from '../run/solve-symmetric.ts';
import { mean } from './straight-drift.ts';
import type { Ripple } from './WarmUp.ts';

const LEAST_READINGS = 60;
const MOST_READINGS = 3000;
/** A platen's ripple is slower: readings closer together are averaged over so long first, s. */
const AVERAGED_S = 1;
const HARMONICS = 3;
/** A swing must be in the record this often, explain this share of the scatter, and be no accident (chance below). */
const LEAST_SWINGS = 4;
const LEAST_SHARE = 0.1;
const CHANCE = 1e-3;
const OVERSAMPLING = 4;

/**
 * The ripple of a settled platen: the period at which a sine explains most of what is left after taking out level, slope and
 * curvature (Lomb 1976, Scargle 1982, from memory), then half the peak-to-peak height of that swing with two harmonics. Periods
 * from 2.2 reading intervals to a quarter of the stretch. Null where no swing stands out of the noise
 * (chance under 0.1 % over all periods tried, a tenth of the scatter at least).
 */
export function findRipple(samples: Samples): Ripple | null {
  const { timesS, valuesC } = detrended(thinned(samples));
  const count = timesS.length;
  if (count < LEAST_READINGS) return null;
  const spanS = timesS[count - 1]! - timesS[0]!;
  const intervalS = spanS / (count - 1);
  const lowest = LEAST_SWINGS / spanS;
  const highest = 1 / (2.2 * intervalS);
  const step = 1 / (OVERSAMPLING * spanS);
  const total = squares(valuesC);
  if (!(total > 0) || !(highest > lowest)) return null;
  const { best, tried } = bestSine(timesS, valuesC, { lowest, highest, step, total });
  const chance = (tried / OVERSAMPLING) * (1 - best.share) ** ((count - 3) / 2);
  if (best.share < LEAST_SHARE || chance > CHANCE) return null;
  const frequency = refined(timesS, valuesC, best.frequency, step);
  return { periodS: 1 / frequency, amplitudeC: halfHeight(timesS, valuesC, frequency, highest) };
}

/** Means over a second where readings come faster than two a second. */
function thinned({ timesS, valuesC }: Samples): Samples {
  const count = timesS.length;
  const intervalS = count < 2 ? AVERAGED_S : (timesS[count - 1]! - timesS[0]!) / (count - 1);
  const size = Math.floor(AVERAGED_S / intervalS);
  if (!(size >= 2) || count / size < LEAST_READINGS) return { timesS, valuesC };
  const blocks = Math.floor(count / size);
  const block = (values: Float64Array, at: number) => mean(values.subarray(at * size, (at + 1) * size));
  return {
    timesS: Float64Array.from({ length: blocks }, (_, at) => block(timesS, at)),
    valuesC: Float64Array.from({ length: blocks }, (_, at) => block(valuesC, at)),
  };
}

function detrended({ timesS, valuesC }: Samples): Samples {
  const from = Math.max(0, timesS.length - MOST_READINGS);
  const times = timesS.slice(from);
  const values = valuesC.slice(from);
  if (times.length < 4) return { timesS: times, valuesC: values };
  const middle = (times[0]! + times[times.length - 1]!) / 2;
  const half = (times[times.length - 1]! - times[0]!) / 2 || 1;
  const level = mean(values);
  const rows = Array.from(times, (time) => {
    const u = (time - middle) / half;
    return [1, u, u * u];
  });
  const fit = leastSquares(
    rows,
    Array.from(values, (value) => value - level),
  );
  return {
    timesS: times.map((time) => time - middle),
    valuesC: values.map(
      (value, i) => value - level - (fit === null ? 0 : rows[i]!.reduce((sum, x, p) => sum + x * fit[p]!, 0)),
    ),
  };
}

/**
 * The frequency, of evenly stepped ones, whose sine and cosine take up most of the squares. Each reading's phase is turned on
 * by one step from frequency to frequency, which spares the sines and cosines.
 */
function bestSine(
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

function refined(timesS: Float64Array, valuesC: Float64Array, frequency: number, step: number): number {
  let best = frequency;
  for (let width = step; width > step / 200; width /= 2) {
    for (const next of [best - width / 2, best + width / 2]) {
      if (next > 0 && sineShare(timesS, valuesC, next) > sineShare(timesS, valuesC, best)) best = next;
    }
  }
  return best;
}

function halfHeight(timesS: Float64Array, valuesC: Float64Array, frequency: number, highest: number): number {
  const harmonics = Math.max(1, Math.min(HARMONICS, Math.floor(highest / frequency)));
  const wave = (timeS: number): number[] =>
    Array.from({ length: harmonics }, (_, h) => 2 * Math.PI * frequency * (h + 1) * timeS).flatMap((x) => [
      Math.cos(x),
      Math.sin(x),
    ]);
  const fit = leastSquares(Array.from(timesS, wave), Array.from(valuesC));
  if (fit === null) return 0;
  let lowest = 0;
  let top = 0;
  for (let i = 0; i < 120; i++) {
    const value = wave(i / 120 / frequency).reduce((sum, x, p) => sum + x * fit[p]!, 0);
    lowest = Math.min(lowest, value);
    top = Math.max(top, value);
  }
  return (top - lowest) / 2;
}

function leastSquares(rows: readonly (readonly number[])[], values: readonly number[]): number[] | null {
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

function squares(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}
