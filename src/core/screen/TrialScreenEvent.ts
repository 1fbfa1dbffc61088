import type { RunEvent } from '../run/RunEvent.ts';
import type { SessionState } from '../session/Session.ts';
import type { RawInput } from './classify-input.ts';
import type { FinishedRun } from './FinishedRun.ts';
import type { LinkStatus, Notice, StoreStatus, TrialStanding } from './TrialScreenState.ts';

/** Everything that can change the trial screen. `atUs`: host monotonic clock, µs. */
export type TrialScreenEvent =
  /** After every entry that the session took: its state, and what the run tracker reported. */
  | {
      readonly kind: 'session';
      readonly state: SessionState;
      readonly events: readonly RunEvent[];
      readonly atUs: number;
    }
  | { readonly kind: 'link'; readonly link: LinkStatus; readonly atUs: number }
  | { readonly kind: 'store'; readonly store: StoreStatus; readonly atUs: number }
  | { readonly kind: 'standing'; readonly standing: TrialStanding; readonly atUs: number }
  /** A stored run shown again has come to its end: what stands is no longer called old. */
  | { readonly kind: 'replay-over'; readonly atUs: number }
  /** Traces of runs that the trial had before it was gone on with. */
  | { readonly kind: 'earlier-runs'; readonly runs: readonly FinishedRun[]; readonly atUs: number }
  | { readonly kind: 'notice'; readonly text: string; readonly tone: Notice['tone']; readonly atUs: number }
  | { readonly kind: 'input'; readonly input: RawInput; readonly atUs: number }
  | { readonly kind: 'tick'; readonly atUs: number; readonly handUs?: number };
