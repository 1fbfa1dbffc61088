import { createReadingAssembler } from '../reading/create-reading-assembler.ts';
import { CHANNEL_FAULTS } from '../reading/ReadingColumns.ts';
import type { Reading, StreamEvent } from '../reading/StreamEvent.ts';
import type { RecordingEntry } from '../recording/RecordingEntry.ts';
import type { LineDecoder } from '../wire/WireEvent.ts';
import { createClockCheckpoints } from './clock-checkpoints.ts';
import type { DecodedTrace } from './DecodedTrace.ts';

/** Decodes a whole recording once, for analyses by several rules. */
export function decodeTrace(entries: Iterable<RecordingEntry>, decoder: LineDecoder): DecodedTrace {
  const assembler = createReadingAssembler({ decoder });
  const readings: Reading[] = [];
  const checkpoints = createClockCheckpoints(() => assembler.clock);
  const others: { readonly readingsBefore: number; readonly event: StreamEvent }[] = [];
  const take = (events: readonly StreamEvent[]): void => {
    for (const event of events) {
      if (event.kind !== 'reading') {
        others.push({ readingsBefore: readings.length, event });
        continue;
      }
      readings.push(event.reading);
      checkpoints.afterReading();
    }
  };
  for (const entry of entries) take(assembler.accept(entry));
  take(assembler.finish());
  checkpoints.atEnd();
  return packed(readings, checkpoints.all, others);
}

function packed(
  readings: readonly Reading[],
  clocks: DecodedTrace['clocks'],
  others: DecodedTrace['others'],
): DecodedTrace {
  const channels = readings.reduce((most, reading) => Math.max(most, reading.values.length), 0);
  const temperaturesC = new Float64Array(readings.length * channels).fill(Number.NaN);
  const kinds = new Uint8Array(readings.length * channels).fill(1);
  for (const [index, reading] of readings.entries()) {
    for (const [channel, value] of reading.values.entries()) {
      const at = index * channels + channel;
      if (value.kind === 'temperature') {
        temperaturesC[at] = value.temperatureC;
        kinds[at] = 0;
      } else if (value.kind === 'fault') kinds[at] = 2 + CHANNEL_FAULTS.indexOf(value.fault);
    }
  }
  return {
    channels,
    timesS: Float64Array.from(readings, (reading) => reading.timeS),
    arrivedUs: Float64Array.from(readings, (reading) => reading.arrivedUs),
    temperaturesC,
    kinds,
    clocks,
    others,
  };
}
