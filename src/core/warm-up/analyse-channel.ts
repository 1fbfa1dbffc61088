import type { Samples } from '../run/collect-samples.ts';
import { median } from '../run/median.ts';
import { comesInsideToStay, firstAbove, firstInside } from './band-crossings.ts';
import { findDips } from './find-dips.ts';
import { fullPower } from './full-power.ts';
import { fullPowerStretch } from './full-power-stretch.ts';
import { largestRate } from './largest-rate.ts';
import { noiseOf } from './noise-of.ts';
import { recoveriesOf } from './recoveries-of.ts';
import type { SmoothTrace } from './smooth-trace.ts';
import { smoothTrace } from './smooth-trace.ts';
import { startTemperature } from './start-temperature.ts';
import { steadyStretch } from './steady-stretch.ts';
import type { ChannelWarmUp, Closing, PlatenTrace, PowerOn, WarmUpRules } from './WarmUp.ts';

/** Smoothing and rate windows for platens, s, and their largest share of the rise for anything faster. */
const SMOOTH_HALF_S = 8;
const RATE_WINDOW_S = 30;
const SMOOTH_SHARE = 1 / 40;
const SLOW_SMOOTH_SHARE = 1 / 12;
const RATE_SHARE = 1 / 12;
/** What comes up by less was no warm-up: no rise time, no share of overshoot, °C. */
const RISES_C = 1;
/** A dip must stand out of the ripple: a sine's middle distance is 0.71 of its amplitude. */
const RIPPLE_FACTOR = 4;

export interface AnalysedChannel {
  readonly warmUp: ChannelWarmUp;
  readonly startUnderWay: boolean;
}

/** All figures of one platen channel; definitions in `WARM_UP_DEFINITIONS`. Times of the result count from power-on. */
export function analyseChannel(
  trace: PlatenTrace,
  powerOn: PowerOn,
  closings: readonly Closing[],
  rules: WarmUpRules,
): AnalysedChannel {
  const { samples, setPointC } = trace;
  const noiseC = noiseOf(samples);
  const start = startTemperature(samples, noiseC, powerOn.by === 'rise' ? null : powerOn.timeS);
  const { startC } = start;
  const smooth = smoothFor(samples, startC);
  const { levelC: level0C, spreadC } = firstLevel(smooth, startC);
  const bandC = rules.ready.bandC;
  const dipBandC = Math.max(rules.recoveryBandC, RIPPLE_FACTOR * spreadC);
  const dips = findDips(smooth, level0C, { bandC: dipBandC, quietS: rules.quietS });
  const end = dips[0] === undefined ? smooth.timesS.length : dips[0].fromIndex + 1;
  const steady = steadyStretch(samples, smooth, level0C, bandC, end);
  const levelC = steady?.levelC ?? null;
  const peak = peakOf(smooth, end);
  const power = fullPowerOf(samples, smooth, start, peak.valueC, noiseC, powerOn);
  const rateWindowS = windowFor(smooth, startC, peak.valueC, RATE_WINDOW_S, RATE_SHARE);
  const rate = largestRate(samples, rateWindowS);
  const since = (timeS: number | null) => (timeS === null ? null : timeS - powerOn.timeS);
  const t10 = levelC === null ? null : firstAbove(smooth, startC + 0.1 * (levelC - startC));
  const t90 = levelC === null ? null : firstAbove(smooth, startC + 0.9 * (levelC - startC));
  const rises = levelC !== null && levelC - startC > RISES_C + 10 * noiseC;
  const rippleC = steady?.ripple?.amplitudeC ?? 0;
  const aboveC = levelC === null ? null : Math.max(0, peak.valueC - levelC - rippleC);
  const overshootC =
    aboveC === null ? null : aboveC > 2 * noiseC && peak.timeS < steady!.fromS ? peak.valueC - levelC! : 0;
  return {
    startUnderWay: isUnderWay(samples, rate.rateCPerS, rateWindowS, noiseC),
    warmUp: {
      channel: trace.channel,
      role: trace.role,
      label: trace.label,
      setPointC,
      startC,
      largestRateCPerS: rate.rateCPerS,
      largestRateAtS: rate.atS - powerOn.timeS,
      fullPower: power,
      reachesBandS: setPointC === null ? null : since(firstInside(smooth, setPointC, bandC)),
      staysInBandS: setPointC === null ? null : since(comesInsideToStay(smooth, setPointC, bandC, end)),
      riseTimeS: t10 === null || t90 === null || !rises ? null : t90 - t10,
      settlingTimeS: since(levelC === null ? null : comesInsideToStay(smooth, levelC, bandC, end)),
      peakC: peak.valueC,
      peakAtS: peak.timeS - powerOn.timeS,
      overshootC,
      overshootPercent: overshootC === null || !rises ? null : (100 * overshootC) / (levelC! - startC),
      steady:
        steady === null
          ? null
          : {
              fromS: steady.fromS - powerOn.timeS,
              toS: steady.toS - powerOn.timeS,
              levelC: steady.levelC,
              meanOffsetC: setPointC === null ? null : steady.levelC - setPointC,
              driftCPerHour: steady.driftCPerHour,
              ripple: steady.ripple,
            },
      recoveries: recoveriesOf(smooth, dips, levelC ?? level0C, closings, powerOn.timeS, dipBandC),
      readyAtS: null,
      noiseC,
      spikes: trace.spikes,
      faults: trace.faults,
    },
  };
}

/** The first third of a rate window already climbs at a third of the largest rate: the true start is not in the record. */
function isUnderWay(
  { timesS, valuesC }: Samples,
  largestCPerS: number,
  rateWindowS: number,
  noiseC: number,
): boolean {
  const end = Math.max(
    6,
    timesS.findIndex((time) => time > timesS[0]! + rateWindowS / 3),
  );
  const first = { timesS: timesS.subarray(0, end), valuesC: valuesC.subarray(0, end) };
  const spanS = first.timesS[first.timesS.length - 1]! - timesS[0]!;
  return largestCPerS * spanS > 5 * noiseC && largestRate(first, spanS).rateCPerS > largestCPerS / 3;
}

function fullPowerOf(
  samples: Samples,
  smooth: SmoothTrace,
  start: { readonly startC: number; readonly standardUncertaintyC: number },
  topC: number,
  noiseC: number,
  powerOn: PowerOn,
) {
  const stretch = fullPowerStretch(samples, smooth, { startC: start.startC, topC, noiseC });
  return stretch === null ? null : fullPower(stretch, start.startC, start.standardUncertaintyC, powerOn);
}

/** Smoothing fit for the pace of the rise: ± 8 s for a platen, less for anything faster. */
function smoothFor(samples: Samples, startC: number): SmoothTrace {
  const rough = smoothTrace(samples, 0);
  const topC = rough.valuesC.reduce((top, value) => Math.max(top, value), startC);
  const halfS = windowFor(rough, startC, topC, SMOOTH_HALF_S, SMOOTH_SHARE);
  // A slow logger: two readings a side, as long as that is short against the rise.
  const twoS = 2.01 * typicalInterval(samples);
  const longestS = windowFor(rough, startC, topC, Number.POSITIVE_INFINITY, SLOW_SMOOTH_SHARE);
  return smoothTrace(samples, twoS <= longestS ? Math.max(halfS, twoS) : halfS);
}

function typicalInterval({ timesS }: Samples): number {
  const last = timesS.length - 1;
  return last < 1 ? 0 : (timesS[last]! - timesS[0]!) / last;
}

function windowFor(trace: SmoothTrace, startC: number, topC: number, mostS: number, share: number): number {
  const t10 = firstAbove(trace, startC + 0.1 * (topC - startC));
  const t90 = firstAbove(trace, startC + 0.9 * (topC - startC));
  return t10 === null || t90 === null ? mostS : Math.min(mostS, Math.max(0, t90 - t10) * share);
}

/** Middle value, and middle distance from it, of the latter half of the time after 90 % of the way: dips and swings are the smaller part of it. */
function firstLevel(smooth: SmoothTrace, startC: number): { levelC: number; spreadC: number } {
  const topC = smooth.valuesC.reduce((top, value) => Math.max(top, value), startC);
  const from = smooth.valuesC.findIndex((value) => value >= startC + 0.9 * (topC - startC));
  const half = Math.floor((from + smooth.valuesC.length) / 2);
  const latter = smooth.valuesC.subarray(Math.min(half, smooth.valuesC.length - 1));
  const levelC = median(latter)!;
  return { levelC, spreadC: median(latter.map((value) => Math.abs(value - levelC)))! };
}

function peakOf({ timesS, valuesC }: SmoothTrace, end: number) {
  let at = 0;
  for (let i = 1; i < end; i++) if (valuesC[i]! > valuesC[at]!) at = i;
  return { timeS: timesS[at]!, valueC: valuesC[at]! };
}
