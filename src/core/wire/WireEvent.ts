/**
 * What one line from a reader (or one row of a logger's file) says, after decoding.
 * Frozen data; a decoder makes them, the reading assembler consumes them.
 */

/** How whole a line is. Only a checksum can vouch for a line whose start or end is unknown. */
export type LineWholeness =
  /** Start and end of the line were both seen. */
  | 'whole'
  /** First line after a port was opened: its start may be missing. */
  | 'start-unknown'
  /** The bytes stopped before the line's end (unplugged, end of file). */
  | 'cut-off'
  /** Longer than the limit; only its head was kept. */
  | 'over-long';

/** One line as received. `text` holds one character per byte (latin1), without the line end. */
export interface ReceivedLine {
  /** Arrival, whole microseconds on the host's monotonic clock, from the start of the recording. */
  readonly arrivedUs: number;
  readonly text: string;
  readonly wholeness: LineWholeness;
}

export type ChannelFault =
  | 'open-circuit'
  | 'short-to-ground'
  | 'short-to-supply'
  | 'over-range'
  | 'cold-junction'
  /** The line holds a value that the layout marks as a fault without saying which (sentinel, `nan`). */
  | 'unspecified';

export type ThermocoupleType = 'K' | 'J' | 'T' | 'E' | 'N' | 'R' | 'S' | 'B';

/** What one channel reported in one sample. */
export type ChannelValue =
  | { readonly kind: 'temperature'; readonly temperatureC: number }
  | { readonly kind: 'emf'; readonly emfUv: number; readonly coldJunctionC: number }
  | { readonly kind: 'fault'; readonly fault: ChannelFault }
  | { readonly kind: 'missing' };

export interface ChannelIdentity {
  /** 1, 2, … as the reader counts. */
  readonly number: number;
  /** Heading or name that the reader or file gives, raw text (neutralise before showing). */
  readonly name: string | null;
  readonly thermocoupleType: ThermocoupleType | null;
  readonly sends: 'temperature' | 'emf' | null;
  /** Smallest step of the channel's values in °C, where the reader states it. */
  readonly resolutionC: number | null;
}

export interface ReaderIdentity {
  readonly name: string | null;
  readonly firmwareVersion: string | null;
  readonly serialNumber: string | null;
  readonly channels: readonly ChannelIdentity[];
  /** Sample rates the reader offers, Hz; empty when unknown. */
  readonly ratesHz: readonly number[];
  /** Rate it samples at now, Hz, where the reader states it. */
  readonly rateHz?: number | null;
  /** True when the reader has a "press closed" contact input. */
  readonly hasContact: boolean;
}

export type WireTrouble =
  | 'garbage'
  | 'bad-checksum'
  | 'over-long'
  | 'cut-off'
  | 'start-unknown'
  /** Checksum right, content not what the protocol allows. */
  | 'malformed';

export interface SampleEvent {
  readonly kind: 'sample';
  /** Counter that rises by one each sample; null where the line has none. */
  readonly sequence: number | null;
  /** Device clock, µs; null where the line has none. It wraps at `LineDecoder.clockWrapUs` if that is set. */
  readonly deviceTimeUs: number | null;
  readonly channels: readonly ChannelValue[];
}

export interface ContactEvent {
  readonly kind: 'contact';
  readonly closed: boolean;
  readonly deviceTimeUs: number | null;
}

export type WireEvent =
  | SampleEvent
  | ContactEvent
  | { readonly kind: 'identity'; readonly identity: ReaderIdentity }
  /** The reader says it (re)started: its counters begin anew. */
  | { readonly kind: 'started' }
  | { readonly kind: 'reply'; readonly accepted: boolean; readonly text: string }
  /** The reader dropped samples on its own side. */
  | { readonly kind: 'overflow'; readonly lostSamples: number }
  /** Banner, heading, comment, blank line: kept, without effect. */
  | { readonly kind: 'remark'; readonly text: string }
  | { readonly kind: 'trouble'; readonly trouble: WireTrouble; readonly text: string }
  /** The layout is plain, but something needed cannot be known without an option (for example the unit). */
  | {
      readonly kind: 'refusal';
      readonly problem: 'unit-unknown' | 'unit-contradicted' | 'column-unknown';
      readonly detail: string;
    };

/** Turns received lines into events. Holds state (recognised layout, identity); never throws on any line. */
export interface LineDecoder {
  decode(line: ReceivedLine): readonly WireEvent[];
  /** In words, what was recognised so far; null before anything was. For people, already neutralised. */
  readonly recognised: string | null;
  /** Period of the device clock counter in µs (2^32 for our own protocol); null where it does not wrap. */
  readonly clockWrapUs: number | null;
  /** Period of the sequence counter; null where there is none. */
  readonly sequenceWrap: number | null;
}
