import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { ChannelFault } from '../wire/WireEvent.ts';
import { collectSamples, type Samples } from './collect-samples.ts';
import { findJumps } from './find-jumps.ts';
import { fitFirstOrder } from './fit-first-order.ts';
import { intervalBefore } from './interval-before.ts';
import { ripple } from './measure-ripple.ts';
import { median } from './median.ts';
import type { ChannelFacts } from './RunFacts.ts';
import type { TraceBuffer } from './TraceBuffer.ts';

/** Works out, once per run, what the checks ask of one channel. */
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
  const all = collectSamples(trace, channel, span.fromS, span.closedUntilS);
  const backS = Math.max(5, 1.2 * intervalBefore(trace, span.restUntilS));
  const before = collectSamples(
    trace,
    channel,
    Math.max(span.fromS, span.restUntilS - backS),
    span.restUntilS,
  );
  const { noiseC, spikes } = scatter(all, span.resolutionC);
  const inPress = collectSamples(trace, channel, span.closedS, span.closedUntilS);
  const restC = median(before.valuesC);
  const startC = restC ?? inPress.valuesC[0] ?? 0;
  const isBondLine = role.startsWith('bond-line');
  const curveFromS = span.riseFromS + 0.15 * Math.min(span.closedUntilS - span.riseFromS, 100);
  return {
    channel,
    role,
    restC,
    jumps: findJumps(all, noiseC, span.resolutionC),
    rippleC: ripple(inPress),
    lowestC: extreme(inPress, -1),
    peakC: extreme(inPress, 1),
    noiseC,
    resolutionC: span.resolutionC,
    spikes,
    spikeShare: all.timesS.length === 0 ? 0 : spikes / all.timesS.length,
    faults: faultSpans(trace, channel, span.fromS, span.closedUntilS),
    validReadings: inPress.timesS.length,
    fit: isBondLine
      ? fitFirstOrder(collectSamples(trace, channel, curveFromS, span.closedUntilS), startC)
      : null,
  };
}

/** Scatter about the mean of both neighbours, MAD · 1.4826/√1.5, at least q/√12; and the count of lone spikes. */
function scatter(samples: Samples, resolutionC: number): { noiseC: number; spikes: number } {
  const { valuesC } = samples;
  const offsets: number[] = [];
  for (let i = 1; i + 1 < valuesC.length; i++)
    offsets.push(Math.abs(valuesC[i]! - (valuesC[i - 1]! + valuesC[i + 1]!) / 2));
  const middle = offsets.length === 0 ? 0 : median(offsets)!;
  const noiseC = Math.max((1.4826 * middle) / Math.sqrt(1.5), resolutionC / Math.sqrt(12));
  const limitC = Math.max(8 * noiseC, 4 * resolutionC, 4);
  let spikes = 0;
  for (let i = 1; i + 1 < valuesC.length; i++) {
    const neighbours = Math.abs(valuesC[i + 1]! - valuesC[i - 1]!);
    if (offsets[i - 1]! > limitC && neighbours < offsets[i - 1]! / 2) spikes++;
  }
  return { noiseC, spikes };
}

/** Highest (or lowest) of medians of three neighbours, so that a lone spike is not the peak. */
function extreme(samples: Samples, sign: 1 | -1): number | null {
  const { valuesC } = samples;
  if (valuesC.length === 0) return null;
  if (valuesC.length < 3) return sign * Math.max(...Array.from(valuesC, (value) => sign * value));
  let best = Number.NEGATIVE_INFINITY;
  for (let i = 1; i + 1 < valuesC.length; i++) {
    const [a, b, c] = [sign * valuesC[i - 1]!, sign * valuesC[i]!, sign * valuesC[i + 1]!];
    best = Math.max(best, Math.max(Math.min(a, b), Math.min(Math.max(a, b), c)));
  }
  return sign * best;
}

function faultSpans(
  trace: TraceBuffer,
  channel: number,
  fromS: number,
  toS: number,
): { fault: ChannelFault; fromS: number; toS: number }[] {
  const spans: { fault: ChannelFault; fromS: number; toS: number }[] = [];
  for (let index = trace.indexFrom(fromS); index < trace.length; index++) {
    const timeS = trace.timeAt(index);
    if (timeS > toS) break;
    const fault = trace.faultAt(channel, index);
    if (fault === null) continue;
    const last = spans[spans.length - 1];
    const previous = index > 0 ? trace.faultAt(channel, index - 1) : null;
    if (last !== undefined && previous === fault) last.toS = timeS;
    else spans.push({ fault, fromS: timeS, toS: timeS });
  }
  return spans;
}
