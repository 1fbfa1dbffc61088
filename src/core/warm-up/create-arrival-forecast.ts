import { fitRiseCurve, type RiseCurve } from './fit-rise-curve.ts';
import type { ReadyEstimate } from './ReadyWatch.ts';
import { mean } from './straight-drift.ts';

/** Means of so long are kept, at most so many; the estimate is worked out anew with each. */
const BLOCK_S = 5;
const MOST_BLOCKS = 240;
const LEAST_BLOCKS = 12;
/** A controller throttles somewhere within this distance of the set point, °C. Common practice, no source. */
const THROTTLE_C = 25;
/** Near the set point only the latest readings tell, s. */
const RECENT_S = 60;
const LEAST_RECENT = 6;
/** A slower approach than this is none, °C/s. */
const LEAST_RATE_C_PER_S = 1e-3;
/** An approach stands out of its scatter by so many standard errors. */
const SURE = 2;
/** How much later than the near forecast it may become, of itself and s. Seen on the simulated warm-ups; judgement, no source. */
const NEAR_SHARE = 0.25;
const EDGE_S = 30;

/**
 * When a platen will come inside its band, from what was read so far. Far away: the first-order curve through the readings,
 * at the earliest straight on to the band, at the latest throttled from 25 °C before the set point on
 * (an exponential approach, τ = distance ÷ rate). Near: straight on, or exponentially, at the pace of the last minute.
 */
export function createArrivalForecast(setPointC: number, bandC: number) {
  const timesS: number[] = [];
  const meansC: number[] = [];
  let blockFromS: number | null = null;
  let sum = 0;
  let timeSum = 0;
  let count = 0;
  let firstC: number | null = null;
  let madeAtS = 0;
  let nowS = 0;
  let made: ReadyEstimate | null = null;

  function closeBlock(): void {
    timesS.push(timeSum / count);
    meansC.push(sum / count);
    firstC ??= sum / count;
    if (timesS.length > MOST_BLOCKS) {
      timesS.shift();
      meansC.shift();
    }
    sum = 0;
    timeSum = 0;
    count = 0;
    made = forecast();
    madeAtS = nowS;
  }

  function forecast(): ReadyEstimate | null {
    const latestC = meansC[meansC.length - 1]!;
    const side = latestC < setPointC ? 1 : -1;
    const awayC = Math.abs(setPointC - latestC);
    if (awayC <= bandC) return { earliestInS: 0, likelyInS: 0, latestInS: 0 };
    if (awayC > THROTTLE_C && side > 0) return far(awayC);
    return near(awayC, side);
  }

  function near(awayC: number, side: number): ReadyEstimate | null {
    const from = Math.max(
      0,
      timesS.findIndex((time) => time >= nowS - RECENT_S),
    );
    const times = timesS.slice(from);
    const distances = meansC.slice(from).map((value) => side * (setPointC - value));
    if (times.length < LEAST_RECENT || distances.some((one) => one <= 0)) return null;
    // A straight approach keeps its rate; an exponential one keeps the share of the distance that goes each second.
    const straight = slopeOf(times, distances);
    const rate = -straight.slope;
    const share = -slopeOf(times, distances.map(Math.log)).slope;
    // A swing of the heater cycle is no approach.
    if (!(rate > Math.max(LEAST_RATE_C_PER_S, SURE * straight.standardError) && share > 0)) return null;
    const { earliestInS, likelyInS, latestInS } = range(
      (awayC - bandC) / rate,
      Math.log(awayC / bandC) / share,
    );
    // At the edge of the band a swing may take it out again, and the pace of one minute says little of the next.
    return {
      earliestInS,
      likelyInS,
      latestInS: latestInS * (1 + NEAR_SHARE) + EDGE_S,
    };
  }

  function far(awayC: number): ReadyEstimate | null {
    const risenC = 0.05 * (setPointC - firstC!);
    const from = meansC.findIndex((value) => value > firstC! + risenC);
    if (from < 0 || timesS.length - from < LEAST_BLOCKS) return null;
    const curve = fitted(from);
    if (curve === null) return null;
    const throttleS = timeTo(curve, setPointC - Math.min(awayC, THROTTLE_C));
    const edgeS = timeTo(curve, setPointC - bandC);
    if (throttleS === null || edgeS === null) return null;
    const rate = rateAt(curve, throttleS);
    if (!(rate > LEAST_RATE_C_PER_S)) return null;
    const approachS = (THROTTLE_C / rate) * Math.log(THROTTLE_C / bandC);
    return range(Math.max(0, edgeS - nowS), Math.max(0, throttleS - nowS) + Math.max(0, approachS));
  }

  function fitted(from: number): RiseCurve | null {
    return fitRiseCurve({
      timesS: Float64Array.from(timesS.slice(from)),
      valuesC: Float64Array.from(meansC.slice(from)),
    });
  }

  return {
    accept(timeS: number, temperatureC: number): void {
      nowS = timeS;
      blockFromS ??= timeS;
      sum += temperatureC;
      timeSum += timeS;
      count += 1;
      if (timeS - blockFromS >= BLOCK_S) {
        closeBlock();
        blockFromS = timeS;
      }
    },
    /** s from the latest reading to inside the band; null where it cannot be told. */
    get arrival(): ReadyEstimate | null {
      if (made === null) return null;
      const gone = nowS - madeAtS;
      return {
        earliestInS: Math.max(0, made.earliestInS - gone),
        likelyInS: Math.max(0, made.likelyInS - gone),
        latestInS: Math.max(0, made.latestInS - gone),
      };
    },
  };
}

function range(oneS: number, otherS: number): ReadyEstimate {
  const earliestInS = Math.min(oneS, otherS);
  const latestInS = Math.max(oneS, otherS);
  return { earliestInS, likelyInS: (earliestInS + latestInS) / 2, latestInS };
}

/** dv/dt = s·e^(−k·u). */
function rateAt({ middleS, rateCPerS, k }: RiseCurve, timeS: number): number {
  return rateCPerS * Math.exp(-Math.max(0, k) * (timeS - middleS));
}

/** Slope of the straight line by least squares, and its standard error. */
function slopeOf(x: readonly number[], y: readonly number[]): { slope: number; standardError: number } {
  const middleX = mean(x);
  const middleY = mean(y);
  let xx = 0;
  let xy = 0;
  x.forEach((value, i) => {
    xx += (value - middleX) ** 2;
    xy += (value - middleX) * (y[i]! - middleY);
  });
  if (!(xx > 0)) return { slope: 0, standardError: Number.POSITIVE_INFINITY };
  const slope = xy / xx;
  const left = y.reduce((sum, value, i) => sum + (value - middleY - slope * (x[i]! - middleX)) ** 2, 0);
  return { slope, standardError: Math.sqrt(left / Math.max(1, x.length - 2) / xx) };
}

/** When the curve reaches a value; null when never. A curve that bends upward is taken as straight. */
function timeTo({ middleS, valueC, rateCPerS, k }: RiseCurve, wantedC: number): number | null {
  if (!(rateCPerS > 0)) return null;
  if (k <= 1e-9) return middleS + (wantedC - valueC) / rateCPerS;
  const x = (k * (wantedC - valueC)) / rateCPerS;
  return x >= 1 ? null : middleS - Math.log1p(-x) / k;
}
