import { collectSamples, type Samples } from './collect-samples.ts';
import { fitCrossing } from './fit-crossing.ts';
import type { Crossing } from './RunResult.ts';
import type { TraceBuffer } from './TraceBuffer.ts';

export interface EstimatedCrossing extends Crossing {
  /** False where no smooth curve fits and the time was interpolated between two readings. */
  readonly byCurve: boolean;
  readonly noiseC: number;
  readonly readings: number;
}

/** Readings within ± this of the crossing are used, s. */
const WINDOW_S = 10;
/** With fewer readings than this the window widens (slow readers). */
const FEWEST_READINGS = 10;

/**
 * When a channel passes the target, from the readings around a first guess and up to `untilS`.
 * Window ±10 s, wider for slow readers until ten readings are in, narrower where the rise began shortly before
 * (a quarter of the way from its start) or heats so fast that ±10 s is no longer near the crossing (±1.5 τ).
 * Where sample spacing at the crossing is over 3.5 s, a third of what curve and straight interpolation differ by at most
 * (k·spacing²/8) is added as model uncertainty. Without a curve: straight interpolation, spacing/√12.
 */
export function estimateCrossing(
  trace: TraceBuffer,
  channel: number,
  targetC: number,
  options: {
    readonly guessS: number;
    readonly riseFromS: number;
    readonly untilS: number;
    readonly resolutionC: number;
  },
): EstimatedCrossing | null {
  let centreS = options.guessS;
  let windowS = WINDOW_S;
  let found: EstimatedCrossing | null = null;
  for (let round = 0; round < 3; round++) {
    const samples = around(trace, channel, centreS, windowS, options.riseFromS, options.untilS);
    const fit = fitCrossing(samples, targetC, options.resolutionC, centreS);
    if (fit === null) break;
    const within = fit.timeS >= samples.timesS[0]! && fit.timeS <= samples.timesS[samples.timesS.length - 1]!;
    if (!within) return found;
    const straight = interpolate(samples, targetC, fit.timeS);
    const modelS =
      straight !== null && straight.spacingS > 3.5
        ? (Math.abs(fit.rateFallPerS) * straight.spacingS ** 2) / 24
        : 0;
    found = {
      timeS: fit.timeS,
      standardUncertaintyS: Math.hypot(fit.standardUncertaintyS, modelS),
      slopeCPerS: fit.slopeCPerS,
      byCurve: true,
      noiseC: fit.noiseC,
      readings: fit.readings,
    };
    const wantedS = fit.rateFallPerS > 0 ? Math.min(WINDOW_S, 1.5 / fit.rateFallPerS) : WINDOW_S;
    const shrink = wantedS < 0.9 * windowS && samples.timesS.length > FEWEST_READINGS;
    if (Math.abs(fit.timeS - centreS) < 0.05 * windowS && !shrink) break;
    centreS = fit.timeS;
    if (shrink) windowS = wantedS;
  }
  if (found !== null) return found;
  const samples = around(trace, channel, options.guessS, WINDOW_S, options.riseFromS, options.untilS);
  const straight = interpolate(samples, targetC, options.guessS);
  if (straight === null) return null;
  return {
    timeS: straight.timeS,
    standardUncertaintyS: Math.max(straight.spacingS / Math.sqrt(12), 0.01),
    slopeCPerS: straight.slopeCPerS,
    byCurve: false,
    noiseC: options.resolutionC / Math.sqrt(12),
    readings: 2,
  };
}

function around(
  trace: TraceBuffer,
  channel: number,
  centreS: number,
  windowS: number,
  riseFromS: number,
  untilS: number,
): Samples {
  const earliestS = Math.min(riseFromS + 0.25 * (centreS - riseFromS), centreS);
  for (let widthS = windowS; ; widthS *= 1.5) {
    const samples = collectSamples(
      trace,
      channel,
      Math.max(centreS - widthS, earliestS),
      Math.min(centreS + widthS, untilS),
    );
    if (samples.timesS.length >= FEWEST_READINGS || widthS > 120) return samples;
  }
}

/** Straight line between the two neighbours that enclose the target nearest to a time. */
function interpolate(
  samples: Samples,
  targetC: number,
  nearS: number,
): { timeS: number; spacingS: number; slopeCPerS: number } | null {
  const { timesS, valuesC } = samples;
  let best: { timeS: number; spacingS: number; slopeCPerS: number } | null = null;
  for (let i = 1; i < timesS.length; i++) {
    if (!(valuesC[i - 1]! < targetC && valuesC[i]! >= targetC)) continue;
    const spacingS = timesS[i]! - timesS[i - 1]!;
    const share = (targetC - valuesC[i - 1]!) / (valuesC[i]! - valuesC[i - 1]!);
    const timeS = timesS[i - 1]! + share * spacingS;
    // Two readings of the same time: a steep but finite slope.
    const slopeCPerS = (valuesC[i]! - valuesC[i - 1]!) / Math.max(spacingS, 1e-3);
    if (best === null || Math.abs(timeS - nearS) < Math.abs(best.timeS - nearS))
      best = { timeS, spacingS, slopeCPerS };
  }
  return best;
}
