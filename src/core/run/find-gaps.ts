import { LIMITS } from './limits.ts';
import type { Gap } from './RunFacts.ts';
import type { TraceBuffer } from './TraceBuffer.ts';

/**
 * Stretches without a valid reading of a channel inside a run: longer than 1 s and than three sample intervals.
 * Those that the stream reported keep their cause.
 */
export function findGaps(
  trace: TraceBuffer,
  channel: number,
  span: { readonly fromS: number; readonly toS: number; readonly intervalS: number },
  reported: readonly Gap[],
): Gap[] {
  const limitS = Math.max(LIMITS.gapS, 3 * span.intervalS);
  const gaps: Gap[] = [];
  let lastS: number | null = null;
  let fault = false;
  for (let index = trace.indexFrom(span.fromS); index < trace.length; index++) {
    const timeS = trace.timeAt(index);
    if (timeS > span.toS) break;
    if (!Number.isFinite(trace.valueAt(channel, index))) {
      fault = true;
      continue;
    }
    if (lastS !== null && timeS - lastS > limitS) {
      const from = lastS;
      const known = reported.find((gap) => gap.fromS < timeS && gap.toS > from);
      gaps.push({ fromS: from, toS: timeS, cause: fault ? 'fault' : (known?.cause ?? 'silence') });
    }
    lastS = timeS;
    fault = false;
  }
  const restarts = reported.filter(
    (gap) =>
      gap.cause !== 'lost-samples' &&
      gap.cause !== 'silence' &&
      gap.toS >= span.fromS &&
      gap.fromS <= span.toS &&
      !gaps.some((found) => gap.fromS < found.toS && gap.toS > found.fromS),
  );
  return [...gaps, ...restarts].sort((a, b) => a.fromS - b.fromS);
}
