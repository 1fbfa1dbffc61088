import type { ProbeCorrection } from '../probe/probe-correction.ts';
import { createReadingAssembler } from '../reading/create-reading-assembler.ts';
import type { StreamEvent } from '../reading/StreamEvent.ts';
import type { ChannelRole, RecordingEntry } from '../recording/RecordingEntry.ts';
import type { LineDecoder } from '../wire/WireEvent.ts';
import type { RecordingTrace, TracePoint } from './RunTrace.ts';

/** Reads a recording's temperatures for a picture: every channel, times in s from the first reading, gaps as null. */
export function readTrace(
  entries: Iterable<RecordingEntry>,
  decoder: LineDecoder,
  roles: readonly ChannelRole[],
  /** Calibration of each channel's probe, channel 1 first; null where none. */
  corrections: readonly (ProbeCorrection | null)[] = [],
): RecordingTrace {
  const assembler = createReadingAssembler({ decoder });
  const channels: TracePoint[][] = [];
  const take = (event: StreamEvent): void => {
    if (event.kind === 'gap')
      for (const points of channels) points.push({ timeS: event.fromS, temperatureC: null });
    if (event.kind !== 'reading') return;
    const { timeS, values } = event.reading;
    values.forEach((value, index) => {
      channels[index] ??= [];
      const correct = corrections[index] ?? ((readC: number) => readC);
      const temperatureC = value.kind === 'temperature' ? correct(value.temperatureC) : null;
      channels[index].push({ timeS, temperatureC });
    });
  };
  for (const entry of entries) for (const event of assembler.accept(entry)) take(event);
  for (const event of assembler.finish()) take(event);
  return {
    channels: channels.map((points, index) => ({
      channel: index + 1,
      role: roles[index] ?? (index === 0 ? 'bond-line' : 'unused'),
      points,
    })),
    identity: assembler.identity,
    counts: { ...assembler.counts },
    clock: { ...assembler.clock },
    recognised: assembler.recognised,
  };
}
