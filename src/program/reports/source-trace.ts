import type { RecordingTrace } from '../../core/figure/RunTrace.ts';
import { readTrace } from '../../core/figure/read-trace.ts';
import type { Probe } from '../../core/probe/Probe.ts';
import { correctionsOf } from '../sources/analyse-source.ts';
import type { Source } from '../sources/Source.ts';

/** A source's temperatures for the pictures, corrected by its probes as the analysis does. */
export function sourceTrace(source: Source, probes: readonly (Probe | null)[]): RecordingTrace {
  return readTrace(source.entries(), source.decoder, source.roles, correctionsOf(probes));
}

/** Each probe once, in the order named. */
export function distinctProbes(probes: readonly (Probe | null)[]): readonly Probe[] {
  const byRecord = new Map(
    probes.flatMap((probe) => (probe === null ? [] : [[JSON.stringify(probe), probe] as const])),
  );
  return [...byRecord.values()];
}
