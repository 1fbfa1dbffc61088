import type { RawInput } from '../screen/classify-input.ts';
import type { InputBuffer } from '../screen/ScreenInput.ts';
import type { LinkStatus, StoreStatus } from '../screen/TrialScreenState.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import type { ReadyRule } from '../warm-up/ReadyRule.ts';
import type { ReadyState } from '../warm-up/ReadyWatch.ts';

/** The live warm-up: platens from cold to READY. */
export interface WarmUpScreenState {
  readonly pressName: string;
  readonly readerName: string;
  readonly simulated: boolean;
  /** Of the reader's clock against the host's; 1 except for a simulation. */
  readonly speed: number;
  readonly rule: ReadyRule;
  readonly unit: TemperatureUnit;
  readonly storePath: string;
  /** What the READY watch told last. */
  readonly ready: ReadyState;
  /** Arrival of the latest reading on the reader's clock, µs; null before the first. */
  readonly latestUs: number | null;
  readonly nowUs: number;
  readonly link: LinkStatus;
  readonly store: StoreStatus | null;
  readonly rung: boolean;
  readonly input: InputBuffer;
}

export type WarmUpScreenEvent =
  | { readonly kind: 'reading'; readonly ready: ReadyState; readonly atUs: number }
  | { readonly kind: 'link'; readonly link: LinkStatus; readonly atUs: number }
  | { readonly kind: 'store'; readonly store: StoreStatus; readonly atUs: number }
  | { readonly kind: 'input'; readonly input: RawInput; readonly atUs: number }
  | { readonly kind: 'tick'; readonly atUs: number };

export type WarmUpScreenIntent =
  | { readonly kind: 'bell' }
  | { readonly kind: 'quit' }
  | { readonly kind: 'unit'; readonly unit: TemperatureUnit };
