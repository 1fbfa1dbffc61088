import { median } from './median.ts';
import { sineBySquares } from './sine-by-squares.ts';

/** Shorter records tell no ripple from noise; longer ones are left to the plain widening, which is wider. */
const FEWEST_READINGS = 60;
const MOST_READINGS = 600;
/** Correlations over so many readings are looked at before the costlier search. */
const LAGS = 12;
/** Fewer swings than this in the record cannot be told from the curve itself. Judgement, no source. */
const FEWEST_SWINGS = 3.5;
/** One frequency that carries this share of the scatter is a ripple; drifting noise seldom gets there. Judgement, no source. */
const LEAST_SHARE = 0.35;

export interface Ripple {
  readonly radPerS: number;
  /** Amplitude, °C. */
  readonly amplitudeC: number;
  /** What is left of the residuals without it. */
  readonly left: Float64Array;
}

/**
 * A ripple of one frequency in residuals (mains or heater, aliased by sampling): the highest peak of their periodogram
 * (Schuster 1898), at half the usual spacing, then laid through by least squares. Cheap where nothing swings.
 * @returns null where no frequency stands out or the record is too short or too long.
 */
export function findRipple(timesS: Float64Array, residuals: Float64Array): Ripple | null {
  const count = residuals.length;
  if (count < FEWEST_READINGS || count > MOST_READINGS) return null;
  const square = laggedProduct(residuals, 0);
  if (!(square > 0) || !hangsTogether(residuals, square)) return null;
  const spacingS = typicalSpacing(timesS);
  const spanS = timesS[count - 1]! - timesS[0]!;
  if (!(spacingS > 0) || spanS / spacingS > 2 * MOST_READINGS) return null;
  const places = Math.round(spanS / spacingS) + 1;
  const peak = highestPeak(timesS, residuals, spacingS, places);
  const stepRadPerS = Math.PI / (places * spacingS);
  let best = sineBySquares(timesS, residuals, peak * stepRadPerS);
  for (const shift of [-0.5, -0.25, 0.25, 0.5]) {
    const other = sineBySquares(timesS, residuals, (peak + shift) * stepRadPerS);
    if (other !== null && (best === null || other.square < best.square)) best = other;
  }
  if (best === null || best.square > (1 - LEAST_SHARE) * square) return null;
  return { radPerS: best.radPerS, amplitudeC: Math.hypot(best.cosine, best.sine), left: best.left };
}

/** Σ vᵢ·vᵢ₋ₖ. */
export function laggedProduct(values: Float64Array, lag: number): number {
  let sum = 0;
  for (let i = lag; i < values.length; i++) sum += values[i]! * values[i - lag]!;
  return sum;
}

/** True where some correlation over few readings is more than chance gives (3.5/√n, but at most a quarter). */
function hangsTogether(residuals: Float64Array, square: number): boolean {
  const limit = Math.min(0.25, 3.5 / Math.sqrt(residuals.length)) * square;
  for (let lag = 1; lag <= LAGS; lag++) if (Math.abs(laggedProduct(residuals, lag)) > limit) return true;
  return false;
}

function typicalSpacing(timesS: Float64Array): number {
  const steps = new Float64Array(Math.min(60, timesS.length - 1));
  for (let i = 0; i < steps.length; i++) steps[i] = timesS[i + 1]! - timesS[i]!;
  return median(steps)!;
}

/** Number of half swings over the record with the most power; readings stand at the nearest whole place. */
function highestPeak(
  timesS: Float64Array,
  residuals: Float64Array,
  spacingS: number,
  places: number,
): number {
  const round = 2 * places;
  const cosines = new Float64Array(round);
  for (let i = 0; i < round; i++) cosines[i] = Math.cos((Math.PI * i) / places);
  const quarter = places / 2;
  let best = 0;
  let most = -1;
  const at = new Int32Array(residuals.length);
  for (let i = 0; i < at.length; i++) at[i] = Math.round((timesS[i]! - timesS[0]!) / spacingS);
  for (let halves = Math.ceil(2 * FEWEST_SWINGS); halves < places; halves++) {
    let c = 0;
    let s = 0;
    for (let i = 0; i < at.length; i++) {
      const place = (halves * at[i]!) % round;
      c += residuals[i]! * cosines[place]!;
      s += residuals[i]! * cosines[(place + round - (quarter | 0)) % round]!;
    }
    const power = c * c + s * s;
    if (power > most) [best, most] = [halves, power];
  }
  return best;
}
