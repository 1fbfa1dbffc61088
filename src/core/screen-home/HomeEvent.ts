import type { Assembly, Press } from '../press/Press.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { RawInput } from '../screen/classify-input.ts';
import type { Notice } from '../screen/TrialScreenState.ts';
import type { LoadedCycle, LoadedTrial, RunTrace } from '../screen-records/RecordsState.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import type { DwellRule } from '../trial/TrialResult.ts';
import type { HomeFacts, TrialPlan } from './HomeFacts.ts';

/** Everything that can change the screens around the trial. `atUs`: host monotonic clock, µs. */
export type HomeEvent =
  | { readonly kind: 'facts'; readonly facts: HomeFacts; readonly atUs: number }
  | { readonly kind: 'trial-loaded'; readonly trial: LoadedTrial; readonly atUs: number }
  | { readonly kind: 'traces-loaded'; readonly traces: readonly RunTrace[]; readonly atUs: number }
  | { readonly kind: 'cycles-loaded'; readonly cycles: readonly LoadedCycle[]; readonly atUs: number }
  | { readonly kind: 'notice'; readonly text: string; readonly tone: Notice['tone']; readonly atUs: number }
  | { readonly kind: 'input'; readonly input: RawInput; readonly atUs: number }
  | { readonly kind: 'tick'; readonly atUs: number };

/** What the screens ask the program to do. Those marked "leaves" end the screen first. */
export type HomeIntent =
  | { readonly kind: 'save-press'; readonly press: Press }
  | { readonly kind: 'save-assembly'; readonly assembly: Assembly }
  | { readonly kind: 'save-plan'; readonly plan: TrialPlan }
  | { readonly kind: 'save-roles'; readonly pressName: string; readonly roles: readonly ChannelRole[] }
  | { readonly kind: 'unit'; readonly unit: TemperatureUnit }
  | { readonly kind: 'close-trial'; readonly trialId: string }
  /** Every trial, not only the latest. */
  | { readonly kind: 'load-all' }
  | { readonly kind: 'load-trial'; readonly trialId: string }
  /** Places in the loaded trial's list of runs, 0 = first. */
  | { readonly kind: 'load-traces'; readonly trialId: string; readonly runs: readonly number[] }
  /** Every logged cycle of production. */
  | { readonly kind: 'load-cycles' }
  /** What the recording of a cycle holds of it; comes back as traces. */
  | { readonly kind: 'load-cycle-trace'; readonly cycleId: string }
  | {
      readonly kind: 'decide-run';
      readonly trialId: string;
      readonly run: number;
      readonly decision: 'set-aside' | 'taken-in' | 'automatic';
      readonly reason: string;
    }
  | {
      readonly kind: 'accept-recipe';
      readonly trialId: string;
      readonly rule: DwellRule;
      readonly initials: string;
    }
  /** Leaves. */
  | { readonly kind: 'start-trial'; readonly plan: TrialPlan; readonly goOnWith: string | null }
  /** Leaves. */
  | { readonly kind: 'replay'; readonly trialId: string; readonly run: number; readonly speed: number }
  /** Leaves. */
  | { readonly kind: 'demo' }
  /** Leaves: an entry that another part of the program added. */
  | { readonly kind: 'entry'; readonly key: string }
  /** Leaves. */
  | { readonly kind: 'quit' };

export type LeavingIntent = Extract<
  HomeIntent,
  { readonly kind: 'start-trial' | 'replay' | 'demo' | 'entry' | 'quit' }
>;
