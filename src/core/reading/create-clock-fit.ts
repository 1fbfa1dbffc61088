import type { ClockComparison } from './StreamEvent.ts';

const POINTS = 64;
const FIRST_WIDTH_US = 250_000;
/** Shorter than this, transfer jitter of a millisecond would be hundreds of ppm. */
const LEAST_SPAN_US = 5_000_000;
/** No oscillator is off by more: such arrivals are no clock (an imported file's row numbers, say). */
const LARGEST_DRIFT_PPM = 100_000;
/** Arrival is kept in whole microseconds: half a step as a rectangular limit, 1/√12 µs. */
const ARRIVAL_STEP_U_US = 1 / Math.sqrt(12);

const UNKNOWN: ClockComparison = Object.freeze({ driftPpm: null, standardUncertaintyPpm: null, overS: 0 });

export interface ClockFit {
  add(timeUs: number, arrivedUs: number): void;
  /** The two clocks lost their relation (restart, host asleep): what follows is fitted anew. */
  breakHere(): void;
  /** From the longest unbroken stretch so far. */
  readonly comparison: ClockComparison;
}

/**
 * Reader's clock against the host's monotonic clock. Delay = arrived − device time is a line with slope
 * (host ÷ device − 1) plus transfer delays that only add; so the smallest delay of each of at most 64 equal
 * stretches is kept (stretches double when full: constant memory, O(1) per reading) and a line is laid through
 * them by the median of all pairwise slopes (Theil 1950, Sen 1968; from memory), which a few late stretches do
 * not move. Standard uncertainty: scatter of the minima about the line ÷ √Σ(x − mean x)²; the host clock's own
 * error is not in it. drift = (device s ÷ host s − 1) · 1e6.
 */
export function createClockFit(): ClockFit {
  const xUs = new Float64Array(POINTS);
  const yUs = new Float64Array(POINTS);
  let count = 0;
  let startUs = 0;
  let widthUs = FIRST_WIDTH_US;
  let best = UNKNOWN;
  let known: ClockComparison | null = null;
  const stretchOf = (timeUs: number): number => Math.floor((timeUs - startUs) / widthUs);
  const halve = (): void => {
    widthUs *= 2;
    let kept = 0;
    for (let i = 1; i < count; i += 1) {
      const x = xUs[i] as number;
      const y = yUs[i] as number;
      const same = stretchOf(x) === stretchOf(xUs[kept] as number);
      if (!same) kept += 1;
      if (!same || y < (yUs[kept] as number)) {
        xUs[kept] = x;
        yUs[kept] = y;
      }
    }
    count = kept + 1;
  };
  const present = (): ClockComparison => {
    if (known !== null) return known;
    // The last stretch is still open: left out, the answer does not depend on when it is asked.
    const fitted = fitLowerLine(xUs, yUs, count - 1);
    known = fitted !== null && fitted.overS >= best.overS ? fitted : best;
    return known;
  };
  return {
    add(timeUs, arrivedUs) {
      const delayUs = arrivedUs - timeUs;
      if (count === 0) startUs = timeUs;
      while (count === POINTS && stretchOf(timeUs) > stretchOf(xUs[count - 1] as number)) halve();
      if (count > 0 && stretchOf(timeUs) <= stretchOf(xUs[count - 1] as number)) {
        if (delayUs < (yUs[count - 1] as number)) yUs[count - 1] = delayUs;
        else return;
        xUs[count - 1] = timeUs;
        return;
      }
      xUs[count] = timeUs;
      yUs[count] = delayUs;
      count += 1;
      known = null;
    },
    breakHere() {
      best = present();
      known = best;
      count = 0;
      widthUs = FIRST_WIDTH_US;
    },
    get comparison() {
      return present();
    },
  };
}

function fitLowerLine(xUs: Float64Array, yUs: Float64Array, count: number): ClockComparison | null {
  const spanUs = count < 3 ? 0 : (xUs[count - 1] as number) - (xUs[0] as number);
  if (spanUs < LEAST_SPAN_US) return null;
  const slopes = new Float64Array((count * (count - 1)) / 2);
  let filled = 0;
  for (let i = 0; i < count; i += 1)
    for (let j = i + 1; j < count; j += 1) {
      slopes[filled] = ((yUs[j] as number) - (yUs[i] as number)) / ((xUs[j] as number) - (xUs[i] as number));
      filled += 1;
    }
  // Exactly equal delays: the arrivals were made from the same clock (another logger's file), there is no second one.
  if (yUs.subarray(0, count).every((delayUs) => delayUs === yUs[0])) return null;
  const slope = medianOf(slopes);
  const driftPpm = (1 / (1 + slope) - 1) * 1e6;
  if (!Number.isFinite(driftPpm) || Math.abs(driftPpm) > LARGEST_DRIFT_PPM) return null;
  const intercept = medianOf(
    Float64Array.from({ length: count }, (_, i) => (yUs[i] as number) - slope * (xUs[i] as number)),
  );
  let meanX = 0;
  for (let i = 0; i < count; i += 1) meanX += (xUs[i] as number) / count;
  let squaresX = 0;
  let squaresR = 0;
  for (let i = 0; i < count; i += 1) {
    squaresX += ((xUs[i] as number) - meanX) ** 2;
    squaresR += ((yUs[i] as number) - intercept - slope * (xUs[i] as number)) ** 2;
  }
  const scatterUs = Math.hypot(Math.sqrt(squaresR / (count - 2)), ARRIVAL_STEP_U_US);
  return Object.freeze({
    driftPpm,
    standardUncertaintyPpm: (scatterUs / Math.sqrt(squaresX)) * 1e6,
    overS: spanUs / 1e6,
  });
}

function medianOf(values: Float64Array): number {
  const sorted = values.sort();
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1
    ? (sorted[middle] as number)
    : ((sorted[middle - 1] as number) + (sorted[middle] as number)) / 2;
}
