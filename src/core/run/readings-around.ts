import { collectSamples, type Samples } from './collect-samples.ts';
import type { TraceBuffer } from './TraceBuffer.ts';

export const WINDOW = {
  /** Readings within ± this of the crossing are used, s. */
  halfWidthS: 10,
  /** With fewer readings than this the window widens (slow readers). */
  fewestReadings: 10,
} as const;

/** Readings of a channel around a time, wider for slow readers until ten are in, none before a quarter of the rise. */
export function readingsAround(
  trace: TraceBuffer,
  channel: number,
  {
    centreS,
    windowS,
    riseFromS,
    untilS,
  }: {
    readonly centreS: number;
    readonly windowS: number;
    readonly riseFromS: number;
    readonly untilS: number;
  },
): Samples {
  const earliestS = Math.min(riseFromS + 0.25 * (centreS - riseFromS), centreS);
  for (let widthS = windowS; ; widthS *= 1.5) {
    const samples = collectSamples(
      trace,
      channel,
      Math.max(centreS - widthS, earliestS),
      Math.min(centreS + widthS, untilS),
    );
    if (samples.timesS.length >= WINDOW.fewestReadings || widthS > 120) return samples;
  }
}
