import type { ChannelRole } from '../recording/RecordingEntry.ts';
import { collectSamples, type Samples, samplesBetween } from './collect-samples.ts';
import { faultSpans } from './fault-spans.ts';
import { findJumps, type Jump } from './find-jumps.ts';
import { type FirstOrderFit, fitFirstOrder } from './fit-first-order.ts';
import { intervalBefore } from './interval-before.ts';
import { extremes, type Scatter, scatter } from './measure-channel.ts';
import { ripple } from './measure-ripple.ts';
import { median } from './median.ts';
import { once } from './once.ts';
import type { ChannelFacts } from './RunFacts.ts';
import type { TraceBuffer } from './TraceBuffer.ts';

/** What the checks ask of one channel, each worked out once and only when it is first asked for. */
export function gatherChannelFacts(
  trace: TraceBuffer,
  channel: number,
  role: ChannelRole,
  span: {
    readonly fromS: number;
    readonly closedS: number;
    readonly restUntilS: number;
    readonly riseFromS: number;
    readonly closedUntilS: number;
    readonly resolutionC: number;
  },
): ChannelFacts {
  const { fromS, closedS, restUntilS, closedUntilS, resolutionC } = span;
  const isBondLine = role.startsWith('bond-line');
  const all = once((): Samples => collectSamples(trace, channel, fromS, closedUntilS));
  const inPress = once((): Samples => samplesBetween(all(), closedS, closedUntilS));
  const rest = once((): number | null => {
    const backS = Math.max(5, 1.2 * intervalBefore(trace, restUntilS));
    const before = collectSamples(trace, channel, Math.max(fromS, restUntilS - backS), restUntilS);
    return median(before.valuesC);
  });
  const scattered = once((): Scatter => scatter(all(), resolutionC));
  const jumps = once((): readonly Jump[] => findJumps(all(), scattered().noiseC, resolutionC));
  const rippleC = once(() => ripple(inPress()));
  const reached = once(() => extremes(inPress()));
  const faults = once(() => faultSpans(trace, channel, fromS, closedUntilS));
  const firstOrder = once((): FirstOrderFit | null => {
    if (!isBondLine) return null;
    const curveFromS = span.riseFromS + 0.15 * Math.min(closedUntilS - span.riseFromS, 100);
    const startC = rest() ?? inPress().valuesC[0] ?? 0;
    return fitFirstOrder(samplesBetween(all(), curveFromS, closedUntilS), startC);
  });
  return {
    channel,
    role,
    resolutionC,
    get restC() {
      return rest();
    },
    get jumps() {
      return jumps();
    },
    get rippleC() {
      return rippleC();
    },
    get lowestC() {
      return reached().lowestC;
    },
    get peakC() {
      return reached().peakC;
    },
    get noiseC() {
      return scattered().noiseC;
    },
    get spikes() {
      return scattered().spikes;
    },
    get spikeShare() {
      return all().timesS.length === 0 ? 0 : scattered().spikes / all().timesS.length;
    },
    get faults() {
      return faults();
    },
    get validReadings() {
      return inPress().timesS.length;
    },
    get fit() {
      return firstOrder();
    },
  };
}
