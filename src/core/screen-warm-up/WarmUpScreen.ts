import type { TraceBuckets } from '../chart/TraceBuckets.ts';
import type { ReadingValue } from '../reading/StreamEvent.ts';
import type { RawInput } from '../screen/classify-input.ts';
import type { InputBuffer } from '../screen/ScreenInput.ts';
import type { LinkStatus, StoreStatus } from '../screen/TrialScreenState.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import type { ReadyRule } from '../warm-up/ReadyRule.ts';
import type { ReadyState } from '../warm-up/ReadyWatch.ts';
import type { ChannelFault } from '../wire/WireEvent.ts';

/** A platen probe: its channel (0 = first) and the letter of its line on the chart. */
export interface PlatenChannel {
  readonly channel: number;
  readonly role: 'upper-platen' | 'lower-platen';
}

/** What came over the wire so far. */
export interface WarmUpCounts {
  readonly lines: number;
  readonly readings: number;
  /** Lost, damaged and malformed. */
  readonly lost: number;
  readonly gaps: number;
}

/** What does not change while a warm-up is watched. */
export interface WarmUpSetup {
  readonly pressName: string;
  readonly readerName: string;
  readonly simulated: boolean;
  /** Of the reader's clock against the host's; 1 except for a simulation. */
  readonly speed: number;
  readonly rule: ReadyRule;
  readonly storePath: string;
  readonly channels: readonly PlatenChannel[];
}

/** The live warm-up: platens from cold to READY. */
export interface WarmUpScreenState extends WarmUpSetup {
  readonly unit: TemperatureUnit;
  /** What the READY watch told last. */
  readonly ready: ReadyState;
  /** As drawn: follows `ready` at most four times a second. */
  readonly shown: ReadyState;
  readonly shownUs: number;
  /** Fault of each platen in the latest reading; null where there is none. */
  readonly faults: readonly (ChannelFault | null)[];
  /** A channel a platen. */
  readonly trace: TraceBuckets;
  /** Time between readings, s; null before the second. */
  readonly intervalS: number | null;
  /** Arrival of the latest reading on the reader's clock, µs; null before the first. */
  readonly latestUs: number | null;
  readonly nowUs: number;
  /** When the reader was opened, µs; null before. */
  readonly openedUs: number | null;
  readonly counts: WarmUpCounts;
  /** Lowest temperature of each platen so far, °C: what it has risen from. */
  readonly lowestC: readonly (number | null)[];
  /** All platens were inside the band together for some seconds; a cold start begins anew. */
  readonly wasInside: boolean;
  /** Heaters switched on, on the recording's clock (s) and the reader's (µs); null while not marked. */
  readonly heaters: { readonly onS: number; readonly onUs: number } | null;
  /** Moment of the latest heaters key, µs. */
  readonly markedUs: number | null;
  readonly link: LinkStatus;
  readonly store: StoreStatus | null;
  readonly rung: boolean;
  readonly cautionsAcknowledged: boolean;
  readonly help: boolean;
  readonly asking: 'quit' | 'heaters' | null;
  readonly notice: {
    readonly text: string;
    readonly tone: 'quiet' | 'good' | 'caution';
    readonly untilUs: number;
  } | null;
  readonly input: InputBuffer;
}

export type WarmUpScreenEvent =
  /** `values`: one a platen, in their order. */
  | {
      readonly kind: 'reading';
      readonly ready: ReadyState;
      readonly values: readonly ReadingValue[];
      readonly atUs: number;
    }
  | { readonly kind: 'counts'; readonly counts: WarmUpCounts; readonly atUs: number }
  | { readonly kind: 'link'; readonly link: LinkStatus; readonly atUs: number }
  | { readonly kind: 'store'; readonly store: StoreStatus; readonly atUs: number }
  /** Heaters switched on, told by something other than a key here. */
  | { readonly kind: 'heaters-on'; readonly atUs: number }
  | { readonly kind: 'notice'; readonly text: string; readonly atUs: number }
  | { readonly kind: 'input'; readonly input: RawInput; readonly atUs: number }
  | { readonly kind: 'tick'; readonly atUs: number };

export type WarmUpScreenIntent =
  | { readonly kind: 'bell' }
  | { readonly kind: 'quit' }
  | { readonly kind: 'cautions-acknowledged' }
  | { readonly kind: 'heaters-on'; readonly atUs: number }
  | { readonly kind: 'undo-heaters-on'; readonly atUs: number }
  | { readonly kind: 'unit'; readonly unit: TemperatureUnit };

export type WarmUpStep = readonly [WarmUpScreenState, readonly WarmUpScreenIntent[]];
