import type { ProbeCorrection } from '../probe/probe-correction.ts';
import type { Reading } from '../reading/StreamEvent.ts';

/** A reading with each probe's calibration applied; the recording keeps what the reader sent. Channels without one pass. */
export function correctedReading(
  reading: Reading,
  corrections: readonly (ProbeCorrection | null)[],
): Reading {
  return {
    ...reading,
    values: reading.values.map((value, at) => {
      const correct = corrections[at] ?? null;
      if (correct === null || value.kind !== 'temperature') return value;
      return { kind: 'temperature', temperatureC: correct(value.temperatureC) };
    }),
  };
}
