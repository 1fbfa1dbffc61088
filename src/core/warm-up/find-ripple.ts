import type { Samples } from '../run/collect-samples.ts';
import { bestSine, refinedSine } from './best-sine.ts';
import { leastSquares } from './least-squares.ts';
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
  const frequency = refinedSine(timesS, valuesC, best.frequency, step);
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

function squares(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}
