import type { RecordingTrace } from '../../core/figure/RunTrace.ts';
import { readTrace } from '../../core/figure/read-trace.ts';
import { headProbes } from '../../core/probe/head-probes.ts';
import type { Probe } from '../../core/probe/Probe.ts';
import { probeCorrection } from '../../core/probe/probe-correction.ts';
import type { Source } from '../sources/Source.ts';

/** A source's temperatures for the pictures, corrected by the probes that its head names. */
export function sourceTrace(source: Source): RecordingTrace {
  const corrections = (source.head === null ? [] : headProbes(source.head)).map((probe) =>
    probe === null ? null : probeCorrection(probe),
  );
  return readTrace(source.entries(), source.decoder, source.roles, corrections);
}

/** Probes that the heads name, each record once. */
export function namedProbes(recordings: readonly { readonly head: Source['head'] }[]): readonly Probe[] {
  const probes = recordings.flatMap(({ head }) => (head === null ? [] : headProbes(head)));
  const byRecord = new Map(
    probes.flatMap((probe) => (probe === null ? [] : [[JSON.stringify(probe), probe] as const])),
  );
  return [...byRecord.values()];
}
