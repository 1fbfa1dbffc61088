import type { OperatorMark } from '../reading/StreamEvent.ts';
import type { LineWholeness } from '../wire/WireEvent.ts';

/** What a channel can be laid on. */
export const CHANNEL_ROLES = [
  'bond-line',
  'bond-line-inner',
  'bond-line-outer',
  'upper-platen',
  'lower-platen',
  'ambient',
  'unused',
] as const;

export type ChannelRole = (typeof CHANNEL_ROLES)[number];

/** Head of a recording: everything that is known before the first line. Absent = unknown. */
export interface RecordingHead {
  readonly recordingId: string;
  /** Wall time of the start, ISO 8601 with offset; a label only, never used for durations. */
  readonly madeAt: string;
  readonly program: string;
  /** Channel 1 first. */
  readonly roles: readonly ChannelRole[];
  readonly simulated: boolean;
  readonly pressName?: string;
  readonly assemblyName?: string;
  readonly trialId?: string;
  readonly operatorInitials?: string;
  readonly targetC?: number;
  readonly holdS?: number;
  readonly platenSetPointC?: { readonly upper: number; readonly lower: number };
  readonly portPath?: string;
  /** Unit that a plain reader's values are in, where the user stated it. */
  readonly statedUnit?: 'C' | 'F' | 'K';
  /** Only in simulated recordings: what really happened, for tests. */
  readonly truth?: SimulationTruth;
  /** Any further `key: value` of the head, kept as it stands. */
  readonly further: Readonly<Record<string, string>>;
}

export interface SimulationTruth {
  readonly seed: number;
  /** Seconds from the recording's first reading. null = never. */
  readonly pressClosedS: number | null;
  /** Crossing of the bond line itself. */
  readonly bondLineCrossingS: number | null;
  /** Crossing of the probe's own (lagging) temperature before noise; what the tool can know. */
  readonly probeCrossingS: number | null;
  readonly openedS: number | null;
  /** The failure switched on, or 'none'. */
  readonly failure: string;
}

export type HostEvent =
  | 'port-lost'
  | 'port-back'
  /** The host slept; the seconds it was away are in `detail`. */
  | 'host-slept'
  | 'recording-resumed';

/** One entry of a recording's body, in the order of arrival. */
export type RecordingEntry =
  | {
      readonly kind: 'line';
      readonly arrivedUs: number;
      readonly text: string;
      readonly wholeness: LineWholeness;
    }
  | {
      readonly kind: 'mark';
      readonly arrivedUs: number;
      readonly by: 'key' | 'pedal' | 'command';
      readonly mark: OperatorMark;
    }
  | { readonly kind: 'host'; readonly arrivedUs: number; readonly event: HostEvent; readonly detail: string };

/** How a recording ended when it was opened again. */
export type RecordingSoundness =
  | { readonly kind: 'sound' }
  /** No closing line: the program or the file was cut short. */
  | { readonly kind: 'not-closed' }
  /** A closing line is there, but count or hash do not fit. */
  | { readonly kind: 'altered'; readonly expected: string; readonly came: string }
  /** An entry could not be read; everything before it was. */
  | { readonly kind: 'broken'; readonly lineNumber: number; readonly text: string };
