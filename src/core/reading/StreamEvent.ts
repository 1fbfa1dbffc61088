import type { ChannelFault, ReaderIdentity, WireTrouble } from '../wire/WireEvent.ts';

/**
 * What the reading assembler hands to the run tracker: time made continuous, emf made °C,
 * lost samples and restarts made gaps. All times are seconds from the recording's first reading.
 */

export type ReadingValue =
  | { readonly kind: 'temperature'; readonly temperatureC: number }
  | { readonly kind: 'fault'; readonly fault: ChannelFault }
  | { readonly kind: 'missing' };

export interface Reading {
  /** Seconds from the recording's first reading, on the reader's clock where it has one. Never runs backwards. */
  readonly timeS: number;
  /** Host arrival, µs, as in the recording. */
  readonly arrivedUs: number;
  /** One value per channel, channel 1 first. */
  readonly values: readonly ReadingValue[];
}

export type GapCause =
  /** Sequence numbers are missing. */
  | 'lost-samples'
  /** No line for much longer than the sample interval. */
  | 'silence'
  /** The reader's counters began anew. */
  | 'reader-restarted'
  /** The port went away and came back. */
  | 'unplugged'
  /** The host slept: the monotonic clock or wall clock jumped. */
  | 'host-asleep'
  /** The file's clock ran backwards. */
  | 'clock-backwards';

export type OperatorMark =
  /** `agoS`: the moment meant lies so long before the mark, since the screen asked first, s. */
  | { readonly kind: 'press-closed'; readonly agoS?: number }
  | { readonly kind: 'opened'; readonly agoS?: number }
  | { readonly kind: 'spoilt'; readonly reason: string }
  | { readonly kind: 'note'; readonly text: string }
  /** Takes back the latest mark of this kind in the present run. */
  | { readonly kind: 'undo'; readonly what: 'press-closed' | 'opened' | 'spoilt' }
  /** How the next (or present) run is set up. */
  | { readonly kind: 'conditions'; readonly conditions: RunConditions };

/** What a run was made with. null = not stated. */
export interface RunConditions {
  readonly ring: 'fresh' | 're-used' | null;
  readonly coating: 'coated' | 'bare' | null;
  readonly carrierId: string | null;
  readonly probe: 're-laid' | 'left' | null;
}

export type StreamEvent =
  | { readonly kind: 'reading'; readonly reading: Reading }
  | { readonly kind: 'contact'; readonly timeS: number; readonly closed: boolean }
  | { readonly kind: 'mark'; readonly timeS: number; readonly mark: OperatorMark }
  | {
      readonly kind: 'gap';
      readonly fromS: number;
      readonly toS: number;
      readonly cause: GapCause;
      readonly lostSamples: number | null;
    }
  | { readonly kind: 'identity'; readonly identity: ReaderIdentity }
  | { readonly kind: 'trouble'; readonly timeS: number; readonly trouble: WireTrouble; readonly text: string }
  | { readonly kind: 'refusal'; readonly problem: string; readonly detail: string };

/** Counts of everything that went wrong or was noticed on the wire; shown, kept and judged. */
export interface WireCounts {
  readonly lines: number;
  readonly readings: number;
  readonly garbage: number;
  readonly badChecksum: number;
  readonly malformed: number;
  readonly overLong: number;
  readonly cutOff: number;
  readonly startUnknown: number;
  readonly duplicates: number;
  readonly lostSamples: number;
  readonly gaps: number;
  readonly restarts: number;
  readonly unplugs: number;
}

/** The reader's clock against the host's monotonic clock over the recording. */
export interface ClockComparison {
  /** (device seconds ÷ host seconds − 1) · 1e6; null without a device clock or under a few seconds. */
  readonly driftPpm: number | null;
  readonly standardUncertaintyPpm: number | null;
  readonly overS: number;
}
