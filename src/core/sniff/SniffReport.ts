import type { ClockComparison, WireCounts } from '../reading/StreamEvent.ts';
import type { ChannelFault, ReaderIdentity, ThermocoupleType } from '../wire/WireEvent.ts';

/** What listening to a reader told about one of its channels. */
export interface SniffedChannel {
  /** 1, 2, … */
  readonly number: number;
  /** Name that the reader gives, raw (neutralise before showing). */
  readonly name: string | null;
  readonly thermocoupleType: ThermocoupleType | null;
  readonly temperatures: number;
  readonly missing: number;
  /** Faulted readings, by fault; faults that never came are absent. */
  readonly faults: Readonly<Partial<Record<ChannelFault, number>>>;
  readonly latestC: number | null;
  readonly lowestC: number | null;
  readonly highestC: number | null;
  /** Standard deviation of the noise of one reading, °C (a difference); null under 8 neighbouring pairs. */
  readonly noiseC: number | null;
  /** Smallest step between two values that came, °C (a difference); null when all were equal. */
  readonly stepC: number | null;
}

/** What listening to a reader told. Frozen; text is made elsewhere. */
export interface SniffReport {
  /** In words, neutralised; null when nothing was recognised. */
  readonly recognised: string | null;
  readonly refusal: { readonly problem: string; readonly detail: string } | null;
  readonly identity: ReaderIdentity | null;
  readonly channels: readonly SniffedChannel[];
  /** Host time from the first entry to the last. */
  readonly listenedS: number;
  /** Readings per second over all unbroken stretches, on the reader's clock where it has one. */
  readonly rateHz: number | null;
  readonly counts: WireCounts;
  readonly clock: ClockComparison;
  /** The first lines that could not be used, raw (neutralise before showing); at most five. */
  readonly examples: readonly string[];
}
