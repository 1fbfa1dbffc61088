import type { ChannelFacts } from './RunFacts.ts';
import type { TraceBuffer } from './TraceBuffer.ts';

/** Stretches of readings in a row that hold the same fault. */
export function faultSpans(
  trace: TraceBuffer,
  channel: number,
  fromS: number,
  toS: number,
): ChannelFacts['faults'] {
  const spans: { fault: ChannelFacts['faults'][number]['fault']; fromS: number; toS: number }[] = [];
  const end = trace.indexAfter(toS);
  for (let index = trace.indexFrom(fromS); index < end; index++) {
    const fault = trace.faultAt(channel, index);
    if (fault === null) continue;
    const timeS = trace.timeAt(index);
    const last = spans[spans.length - 1];
    const previous = index > 0 ? trace.faultAt(channel, index - 1) : null;
    if (last !== undefined && previous === fault) last.toS = timeS;
    else spans.push({ fault, fromS: timeS, toS: timeS });
  }
  return spans;
}
