import { type AveragedReadings, averageReadings, type Readings } from './average-readings.ts';
import { type ExponentialRise, fitExponentialRise } from './fit-exponential-rise.ts';
import type { HeatingFit } from './HeatingFit.ts';
import { residualTest } from './residual-test.ts';

/** Means that a fit works on: more change its result by less than a thousandth. */
const MEANS = 64;
const FEWEST_READINGS = 8;
/** A reading this many times the scatter off the curve is a spike. */
const SPIKE_SCATTERS = 8;
const LEAST_SPIKE_C = 3;

/**
 * Heating curve of first order after a delay, fitted by least squares to a bond line's readings between the onset and
 * the opening: T(t) = Tp − (Tp − T0)·exp(−(t − d)/τ). Plateau, time constant and drop are free; the departure
 * d = t₁ + τ·ln(drop₁/(Tp − T0)) follows from the start temperature T0 measured before the closing, with its
 * standard uncertainty. Spikes are left out. Where residuals hang together (lag-1 autocorrelation ρ > 0) variances are
 * widened by (1 + ρ)/(1 − ρ). Null with fewer than 8 readings, a falling or straight trace, or a plateau below T0.
 */
export function fitHeatingCurve(
  readings: Readings,
  { startC, startUncertaintyC = 0 }: { readonly startC: number; readonly startUncertaintyC?: number },
): HeatingFit | null {
  if (readings.timesS.length < FEWEST_READINGS) return null;
  const first = fitMeans(averageReadings(readings, MEANS));
  if (first === null) return null;
  const left = spikesOf(readings, first);
  const rise = left.count === 0 ? first : fitMeans(averageReadings(readings, MEANS, left.marked));
  if (rise === null || !(rise.drop > 0) || !(rise.plateau > startC)) return null;
  return heatingFit(readings, rise, left, { startC, startUncertaintyC });
}

function fitMeans({ timesS, valuesC, counts }: AveragedReadings): ExponentialRise | null {
  return fitExponentialRise(timesS, valuesC, { weights: counts });
}

function residualsOf(
  { timesS, valuesC }: Readings,
  { plateau, drop, rate, origin }: ExponentialRise,
): Float64Array {
  const residuals = new Float64Array(timesS.length);
  for (let i = 0; i < residuals.length; i += 1)
    residuals[i] = valuesC[i]! - plateau + drop * Math.exp(-rate * (timesS[i]! - origin));
  return residuals;
}

interface LeftOut {
  readonly marked: Uint8Array;
  readonly count: number;
}

/** Readings far off the curve and off their neighbours' residuals: spikes, not a wrong model. */
function spikesOf(readings: Readings, rise: ExponentialRise): LeftOut {
  const residuals = residualsOf(readings, rise);
  const n = residuals.length;
  const marked = new Uint8Array(n);
  let total = 0;
  for (let i = 1; i < n; i += 1) total += Math.abs(residuals[i]! - residuals[i - 1]!);
  const limitC = Math.max(LEAST_SPIKE_C, (SPIKE_SCATTERS * total) / Math.max(1, n - 1));
  let count = 0;
  for (let i = 0; i < n; i += 1) {
    const before = residuals[Math.max(0, i - 1)]!;
    const after = residuals[Math.min(n - 1, i + 1)]!;
    const here = residuals[i]!;
    const off = Math.min(Math.abs(here - before) || Infinity, Math.abs(here - after) || Infinity);
    if (!(off > limitC) || off === Number.POSITIVE_INFINITY) continue;
    marked[i] = 1;
    count += 1;
  }
  return { marked, count };
}

function heatingFit(
  readings: Readings,
  rise: ExponentialRise,
  left: LeftOut,
  { startC, startUncertaintyC }: { readonly startC: number; readonly startUncertaintyC: number },
): HeatingFit | null {
  const all = residualsOf(readings, rise);
  const residuals = left.count === 0 ? all : all.filter((_, i) => left.marked[i] === 0);
  const n = residuals.length;
  if (n < FEWEST_READINGS) return null;
  let squares = 0;
  for (let i = 0; i < n; i += 1) squares += residuals[i]! ** 2;
  const variance = squares / (n - 3);
  const test = residualTest(residuals, rise.plateau - startC);
  const rho = Math.min(0.99, Math.max(0, test.lag1Autocorrelation));
  const timeConstantS = 1 / rise.rate;
  const logShare = Math.log(rise.drop / (rise.plateau - startC));
  const departsS = rise.origin + timeConstantS * logShare;
  if (!Number.isFinite(departsS)) return null;
  const covariance = transformed(
    rise,
    { variance: (variance * (1 + rho)) / (1 - rho), startC, startUncertaintyC, logShare },
    timeConstantS,
  );
  return {
    plateauC: rise.plateau,
    timeConstantS,
    departsS,
    startC,
    covariance,
    residualSdC: Math.sqrt(variance),
    residuals: test,
    readings: n,
    spikes: left.count,
  };
}

/** Covariance of (plateau, time constant, departure) from that of (plateau, drop, rate) and the start's own doubt. */
function transformed(
  { plateau, drop, rate, inverse }: ExponentialRise,
  known: {
    readonly variance: number;
    readonly startC: number;
    readonly startUncertaintyC: number;
    readonly logShare: number;
  },
  timeConstantS: number,
): HeatingFit['covariance'] {
  const overStart = plateau - known.startC;
  const rows = [
    [1, 0, 0],
    [0, 0, -1 / rate ** 2],
    [-timeConstantS / overStart, timeConstantS / drop, -known.logShare / rate ** 2],
  ];
  const byStart = (timeConstantS / overStart) * known.startUncertaintyC;
  return rows.map((a, i) =>
    rows.map((b, j) => {
      let sum = 0;
      for (let k = 0; k < 3; k += 1) for (let l = 0; l < 3; l += 1) sum += a[k]! * b[l]! * inverse[k]![l]!;
      return sum * known.variance + (i === 2 && j === 2 ? byStart ** 2 : 0);
    }),
  ) as unknown as HeatingFit['covariance'];
}
