import type { ChartBandPoint } from '../chart/ChartSpec.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { RawInput } from '../screen/classify-input.ts';
import type { InputBuffer } from '../screen/ScreenInput.ts';
import type { TrialScreenEvent } from '../screen/TrialScreenEvent.ts';
import type { LinkStatus, Notice, StoreStatus } from '../screen/TrialScreenState.ts';
import type { SessionState } from '../session/Session.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import type { BondingCycle, CycleFacts } from './BondingCycle.ts';
import type { PlatensSteady } from './platens-now.ts';
import type { Steady } from './steady.ts';

/** Where the bond line stands against the recipe's own runs. */
export type BandSide = 'inside' | 'below' | 'above';

/** A recipe made ready for production. Temperatures in °C. */
export interface BondingJob {
  readonly recipe: Recipe;
  readonly gaugePsi: number | null;
  /** Ring or ram are no longer those of the recipe's gauge pressure, in words; null or absent where they are. */
  readonly gaugeRemark?: string | null;
  readonly platenSetPointC: { readonly upper: number; readonly lower: number } | null;
  /** Half-width of the platens' band about their set points, °C of difference. */
  readonly platenBandC: number;
  /** Lowest and highest bond line of the recipe's own runs since press closed; empty where they are not in the store. */
  readonly band: readonly ChartBandPoint[];
  /** Added to the band on both sides, °C of difference. */
  readonly bandToleranceC: number;
  /** Channel 1 first; null without a reader. */
  readonly roles: readonly ChannelRole[] | null;
  readonly readerName: string | null;
  readonly simulated: boolean;
  readonly speed: number;
}

/** A press closed, perhaps opened again, not yet logged. Times of the link's clock, µs. */
export interface CycleUnderWay {
  readonly closedUs: number;
  readonly closedBy: 'key' | 'contact';
  /** The closing on the recording's own time, s; null before the readings told it, and without a reader. */
  readonly closedS: number | null;
  readonly openedUs: number | null;
  readonly openedBy: 'key' | 'contact' | null;
  /** The contact let go at once: a pedal, which says nothing of the opening. */
  readonly pedal: boolean;
  /** The dwell's end was announced. */
  readonly announced: boolean;
  readonly platensC: { readonly upper: number | null; readonly lower: number | null };
  readonly platenOut: boolean;
  readonly tooSoon: boolean;
  /** Against the recipe's band, steady at its edge; null: not known. */
  readonly band: Steady<BandSide> | null;
  /** Was held against the band at any time. */
  readonly bandSeen: boolean;
  readonly wasOutside: boolean;
  /** Readings were stale or faulted while the hold counted. */
  readonly unseen: boolean;
}

export interface BondingState {
  /** Recipes to choose from, the latest versions. */
  readonly choices: readonly Recipe[];
  readonly selected: number;
  /** Null while a recipe is being chosen, or made ready. */
  readonly job: BondingJob | null;
  /** A chosen recipe is being made ready. */
  readonly opening: boolean;
  readonly cautionsAcknowledged: boolean;
  readonly under: CycleUnderWay | null;
  /** Opened, its last readings still coming in, while the next is closed already. */
  readonly pending: CycleUnderWay | null;
  readonly lastOpenedUs: number | null;
  /** Logged since the start, newest last. */
  readonly logged: readonly BondingCycle[];
  readonly session: SessionState | null;
  readonly latestUs: number | null;
  /** The reader's own interval between readings, s; null before two of them. */
  readonly intervalS: number | null;
  readonly platens: PlatensSteady;
  readonly link: LinkStatus;
  readonly store: StoreStatus | null;
  readonly unit: TemperatureUnit;
  readonly nowUs: number;
  readonly latestMarkUs: number | null;
  readonly input: InputBuffer;
  readonly notice: Notice | null;
  readonly asking: 'quit' | null;
  readonly help: boolean;
  readonly storePath: string;
}

export type BondingEvent =
  | Extract<TrialScreenEvent, { readonly kind: 'session' | 'link' | 'store' | 'notice' | 'tick' }>
  | { readonly kind: 'input'; readonly input: RawInput; readonly atUs: number }
  | { readonly kind: 'prepared'; readonly job: BondingJob; readonly atUs: number }
  | { readonly kind: 'logged'; readonly cycle: BondingCycle; readonly atUs: number }
  /** No more readings will come: what is under way is logged as it stands. */
  | { readonly kind: 'leave'; readonly atUs: number };

export type BondingIntent =
  | { readonly kind: 'recipe-chosen'; readonly recipe: Recipe }
  | { readonly kind: 'cautions-acknowledged' }
  | {
      readonly kind: 'mark';
      readonly what: 'press-closed' | 'opened';
      readonly by: 'key';
      readonly atUs: number;
    }
  | { readonly kind: 'undo'; readonly what: 'press-closed' | 'opened'; readonly atUs: number }
  | { readonly kind: 'log-cycle'; readonly facts: CycleFacts }
  | { readonly kind: 'unit'; readonly unit: TemperatureUnit }
  | { readonly kind: 'bell' }
  | { readonly kind: 'quit' };

export type BondingStep = readonly [BondingState, readonly BondingIntent[]];
