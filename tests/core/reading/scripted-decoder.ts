import type { RecordingEntry } from '../../../src/core/recording/RecordingEntry.ts';
import type { LineDecoder, WireEvent } from '../../../src/core/wire/WireEvent.ts';

/** A decoder whose lines are numbers of prepared events: tests say what a line means, not how it is written. */
export function scriptedDecoder(
  wraps: { readonly clockWrapUs: number | null; readonly sequenceWrap: number | null } = {
    clockWrapUs: 2 ** 32,
    sequenceWrap: 2 ** 16,
  },
): LineDecoder & { line(arrivedUs: number, ...events: WireEvent[]): RecordingEntry } {
  const script: WireEvent[][] = [];
  return {
    ...wraps,
    recognised: 'scripted',
    decode: (line) => script[Number(line.text)] ?? [],
    line(arrivedUs, ...events) {
      script.push(events);
      return { kind: 'line', arrivedUs, text: String(script.length - 1), wholeness: 'whole' };
    },
  };
}

export function sample(sequence: number | null, deviceTimeUs: number | null, temperatureC = 20): WireEvent {
  return { kind: 'sample', sequence, deviceTimeUs, channels: [{ kind: 'temperature', temperatureC }] };
}
