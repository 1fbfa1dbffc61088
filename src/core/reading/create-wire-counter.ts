import type { WireTrouble } from '../wire/WireEvent.ts';
import type { WireCounts } from './StreamEvent.ts';

export type RunningCounts = { -readonly [Name in keyof WireCounts]: number };

const COUNTED_AS: Readonly<Record<WireTrouble, keyof WireCounts>> = Object.freeze({
  garbage: 'garbage',
  'bad-checksum': 'badChecksum',
  'over-long': 'overLong',
  'cut-off': 'cutOff',
  'start-unknown': 'startUnknown',
  malformed: 'malformed',
});

/** Counts of everything noticed on the wire, all from 0. `duplicates` holds repeated and out-of-order samples. */
export function createWireCounter(): { readonly counts: RunningCounts; trouble(trouble: WireTrouble): void } {
  const counts: RunningCounts = {
    lines: 0,
    readings: 0,
    garbage: 0,
    badChecksum: 0,
    malformed: 0,
    overLong: 0,
    cutOff: 0,
    startUnknown: 0,
    duplicates: 0,
    lostSamples: 0,
    gaps: 0,
    restarts: 0,
    unplugs: 0,
  };
  return {
    counts,
    trouble(trouble) {
      counts[COUNTED_AS[trouble]] += 1;
    },
  };
}
