import type { InputBuffer } from '../screen/ScreenInput.ts';
import type { Notice } from '../screen/TrialScreenState.ts';
import type { RecordsState } from '../screen-records/RecordsState.ts';
import type { GuideState } from '../screen-shell/Guide.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import type { HomeFacts, TrialPlan } from './HomeFacts.ts';

export type GuideName = 'press' | 'assembly' | 'reader' | 'initials';
/** Where a finished or left guide or list goes: on to what is still missing in the set-up, or back. */
export type ReturnTo = 'home' | 'set-up' | 'trial' | 'first-use';

export type HomePage =
  | { readonly kind: 'home' }
  | { readonly kind: 'guide'; readonly name: GuideName; readonly guide: GuideState; readonly after: ReturnTo }
  | {
      readonly kind: 'choose';
      readonly what: 'press' | 'assembly';
      readonly selected: number;
      readonly after: ReturnTo;
    }
  | { readonly kind: 'set-up' }
  | { readonly kind: 'trial' }
  | {
      readonly kind: 'lines';
      readonly title: string;
      readonly word: string;
      readonly lines: readonly string[];
      readonly scroll: number;
    }
  | { readonly kind: 'records'; readonly records: RecordsState };

/** State of everything around the trial: home, set-up, start of a trial, records. */
export interface HomeState {
  readonly facts: HomeFacts;
  readonly plan: TrialPlan;
  /** Trial of the store that gets a further recording; null: a new trial is started. */
  readonly goOnWith: string | null;
  readonly unit: TemperatureUnit;
  /** Host monotonic clock, µs. */
  readonly nowUs: number;
  readonly page: HomePage;
  /** Help lies over the page; `helpScroll` rows further down. */
  readonly help: number | null;
  readonly askingQuit: boolean;
  /** The open trial is to be closed. */
  readonly askingClose?: boolean;
  readonly input: InputBuffer;
  readonly notice: Notice | null;
}
