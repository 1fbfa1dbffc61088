import type { BondingCycle } from '../../core/bonding/BondingCycle.ts';
import { recordingDecoder } from '../../core/exchange/recording-decoder.ts';
import type { RecordingTrace, TracePoint } from '../../core/figure/RunTrace.ts';
import { headProbes } from '../../core/probe/head-probes.ts';
import { createReadingAssembler } from '../../core/reading/create-reading-assembler.ts';
import type { StreamEvent } from '../../core/reading/StreamEvent.ts';
import { bondLineChannels } from '../../core/screen/bond-line-channels.ts';
import { correctedReading } from '../../core/session/corrected-reading.ts';
import type { StoredRecording } from '../../core/store/Store.ts';
import { correctionsOf } from '../sources/analyse-source.ts';

/** Shown before press closed and after the opening, s. */
const BEFORE_S = 10;
const AFTER_S = 5;

/**
 * Bond lines of a recording's cycles from press closed, the coldest probe at each time, corrected by its probes' records;
 * and what the recording says of its reader. One pass: a shift of many hours never stands in memory whole.
 */
export function cycleTraces(
  recording: StoredRecording,
  cycles: readonly BondingCycle[],
): { readonly trace: RecordingTrace; readonly bondLines: ReadonlyMap<string, readonly TracePoint[]> } {
  const { head } = recording;
  const { decoder } = recordingDecoder(head);
  const assembler = createReadingAssembler({ decoder });
  const corrections = correctionsOf(headProbes(head));
  const channels = bondLineChannels(head.roles);
  const windows = cycles.flatMap(({ cycleId, recordedAtS, dwellHeldS }) =>
    recordedAtS == null
      ? []
      : [
          {
            cycleId,
            zeroS: recordedAtS,
            untilS: recordedAtS + dwellHeldS + AFTER_S,
            points: [] as TracePoint[],
          },
        ],
  );
  const take = (event: StreamEvent): void => {
    if (event.kind === 'gap')
      for (const { points, zeroS } of windows.filter(({ points: own }) => own.length > 0))
        points.push({ timeS: event.fromS - zeroS, temperatureC: null });
    if (event.kind !== 'reading') return;
    const within = windows.filter(
      ({ zeroS, untilS }) => event.reading.timeS >= zeroS - BEFORE_S && event.reading.timeS <= untilS,
    );
    if (within.length === 0) return;
    const { timeS, values } = correctedReading(event.reading, corrections);
    const seen = channels.flatMap((at) => {
      const value = values[at];
      return value?.kind === 'temperature' ? [value.temperatureC] : [];
    });
    const temperatureC = seen.length === 0 ? null : Math.min(...seen);
    for (const { points, zeroS } of within) points.push({ timeS: timeS - zeroS, temperatureC });
  };
  for (const entry of recording.entries()) for (const event of assembler.accept(entry)) take(event);
  for (const event of assembler.finish()) take(event);
  return {
    trace: {
      channels: head.roles.map((role, at) => ({ channel: at + 1, role, points: [] })),
      identity: assembler.identity,
      counts: { ...assembler.counts },
      clock: { ...assembler.clock },
      recognised: assembler.recognised,
    },
    bondLines: new Map(
      windows.flatMap(({ cycleId, points }) =>
        points.some(({ temperatureC }) => temperatureC !== null) ? [[cycleId, points] as const] : [],
      ),
    ),
  };
}
