import type { Samples } from './collect-samples.ts';
import { crossingUncertainty } from './crossing-uncertainty.ts';
import { type FittedCurve, fitCrossing } from './fit-crossing.ts';
import { interpolateCrossing } from './interpolate-crossing.ts';
import type { Crossing } from './RunResult.ts';
import { readingsAround, WINDOW } from './readings-around.ts';
import type { TraceBuffer } from './TraceBuffer.ts';

export interface EstimatedCrossing extends Crossing {
  /** False where no smooth curve fits and the time was interpolated between two readings. */
  readonly byCurve: boolean;
  readonly noiseC: number;
  readonly readings: number;
}

export interface CrossingSearch {
  readonly guessS: number;
  readonly riseFromS: number;
  readonly untilS: number;
  readonly resolutionC: number;
}

export interface CrossingCurve {
  readonly samples: Samples;
  readonly fit: FittedCurve;
}

/**
 * When a channel passes the target, from the readings around a first guess and up to `untilS`: the curve's crossing with
 * its uncertainty; without a curve straight interpolation, spacing/√12; null where nothing crosses.
 */
export function estimateCrossing(
  trace: TraceBuffer,
  channel: number,
  targetC: number,
  search: CrossingSearch,
): EstimatedCrossing | null {
  const curve = findCrossingCurve(trace, channel, targetC, search);
  return (
    (curve === null ? null : crossingOfCurve(curve, targetC)) ??
    straightCrossing(trace, channel, targetC, search)
  );
}

/**
 * The curve through the readings around the guess. Window ±10 s, wider for slow readers until ten readings are in, narrower
 * where the rise began shortly before (a quarter of the way from its start) or heats so fast that ±10 s is no longer near
 * the crossing (±1.5 τ). Null where no curve fits or it crosses outside of its readings.
 */
export function findCrossingCurve(
  trace: TraceBuffer,
  channel: number,
  targetC: number,
  { guessS, riseFromS, untilS, resolutionC }: CrossingSearch,
): CrossingCurve | null {
  let centreS = guessS;
  let windowS: number = WINDOW.halfWidthS;
  let found: CrossingCurve | null = null;
  for (let round = 0; round < 3; round++) {
    const samples = readingsAround(trace, channel, { centreS, windowS, riseFromS, untilS });
    const fit = fitCrossing(samples, targetC, resolutionC, centreS, found?.fit.curve ?? null);
    if (fit === null) break;
    const { timesS } = samples;
    const { tc, k } = fit.curve;
    if (!(tc >= timesS[0]! && tc <= timesS[timesS.length - 1]!)) break;
    found = { samples, fit };
    const wantedS = k > 0 ? Math.min(WINDOW.halfWidthS, 1.5 / k) : WINDOW.halfWidthS;
    const shrink = wantedS < 0.9 * windowS && timesS.length > WINDOW.fewestReadings;
    if (Math.abs(tc - centreS) < 0.05 * windowS && !shrink) break;
    centreS = tc;
    if (shrink) windowS = wantedS;
  }
  return found;
}

/**
 * The crossing that a curve tells, with its uncertainty. Where sample spacing at the crossing is over 3.5 s, a third of what
 * curve and straight interpolation differ by at most (k·spacing²/8) is added as model uncertainty.
 */
export function crossingOfCurve({ samples, fit }: CrossingCurve, targetC: number): EstimatedCrossing | null {
  const known = crossingUncertainty(fit);
  if (known === null) return null;
  const { tc, s, k } = fit.curve;
  const straight = interpolateCrossing(samples, targetC, tc);
  const spacingS = straight?.spacingS ?? 0;
  const modelS = spacingS > 3.5 ? (Math.abs(k) * spacingS ** 2) / 24 : 0;
  return {
    timeS: tc,
    standardUncertaintyS: Math.hypot(known.standardUncertaintyS, modelS),
    slopeCPerS: s,
    byCurve: true,
    noiseC: known.noiseC,
    readings: samples.timesS.length,
  };
}

/** Straight line between the two readings that enclose the target, nearest to the guess. */
export function straightCrossing(
  trace: TraceBuffer,
  channel: number,
  targetC: number,
  { guessS, riseFromS, untilS, resolutionC }: CrossingSearch,
): EstimatedCrossing | null {
  const windowS = WINDOW.halfWidthS;
  const samples = readingsAround(trace, channel, { centreS: guessS, windowS, riseFromS, untilS });
  const straight = interpolateCrossing(samples, targetC, guessS);
  if (straight === null) return null;
  return {
    timeS: straight.timeS,
    standardUncertaintyS: Math.max(straight.spacingS / Math.sqrt(12), 0.01),
    slopeCPerS: straight.slopeCPerS,
    byCurve: false,
    noiseC: resolutionC / Math.sqrt(12),
    readings: 2,
  };
}
