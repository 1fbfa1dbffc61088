import type { BondingCycle } from '../bonding/BondingCycle.ts';
import type { ChartBandPoint } from '../chart/ChartSpec.ts';
import type { ReadingValue } from '../reading/StreamEvent.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { TrialOutcome } from '../result/trial-outcome.ts';
import type { TrialFacts } from '../screen-home/HomeFacts.ts';
import type { DwellRule } from '../trial/TrialResult.ts';

/** A trial of the store with its runs and figures, worked out by the program so that the home starts without it. */
export interface LoadedTrial {
  readonly trialId: string;
  /** Mean, spread and dwell in sentences. */
  readonly figures: readonly string[];
  /** The rule that an acceptance takes. */
  readonly strictestRule: DwellRule;
  readonly outcome: TrialOutcome;
}

/** Readings of one run. Times in s from press closed (from the recording's start where that is not known). */
export interface RunTrace {
  /** Place in the trial's list of runs, 0 = first. */
  readonly run: number;
  readonly roles: readonly ChannelRole[];
  readonly closedKnown: boolean;
  readonly targetC: number;
  readonly crossingS: number | null;
  readonly openedS: number | null;
  readonly readings: readonly { readonly timeS: number; readonly values: readonly ReadingValue[] }[];
  /** Shade behind it: the runs that a cycle's recipe rests on. */
  readonly band?: readonly ChartBandPoint[];
}

/** A logged cycle of production with its local times, for people. */
export interface LoadedCycle {
  readonly cycle: BondingCycle;
  /** "25 Nov 2026 14:03". */
  readonly when: string;
}

/** Which cycles are listed; null: all. */
export interface CycleFilter {
  readonly assemblyName: string | null;
  readonly pressName: string | null;
}

/** Window and cursor of the chart, s from press closed. */
export interface ChartWindow {
  readonly fromS: number;
  readonly toS: number;
  readonly cursorS: number;
}

export type RecordsView =
  | { readonly kind: 'trials'; readonly selected: number }
  | { readonly kind: 'recipes'; readonly selected: number }
  | { readonly kind: 'cycles'; readonly selected: number }
  | { readonly kind: 'cycle'; readonly cycleId: string }
  | {
      readonly kind: 'cycleChart';
      readonly cycleId: string;
      /** Null until the trace has come. */
      readonly window: ChartWindow | null;
    }
  | {
      readonly kind: 'trial';
      readonly trialId: string;
      readonly selected: number;
      /** Places of runs picked for one chart. */
      readonly picked: readonly number[];
    }
  | {
      readonly kind: 'chart';
      readonly trialId: string;
      readonly runs: readonly number[];
      /** Null until the traces have come. */
      readonly window: ChartWindow | null;
    };

export type RecordsDialog =
  | { readonly kind: 'decision'; readonly decision: 'set-aside' | 'taken-in'; readonly text: string }
  | { readonly kind: 'initials'; readonly text: string }
  | { readonly kind: 'replay-speed' };

export interface RecordsState {
  /** Newest first. */
  readonly trials: readonly TrialFacts[];
  /** Newest first. */
  readonly recipes: readonly Recipe[];
  /** Newest first; null until they have come. */
  readonly cycles: readonly LoadedCycle[] | null;
  readonly cycleFilter: CycleFilter;
  readonly view: RecordsView;
  readonly loaded: LoadedTrial | null;
  readonly traces: readonly RunTrace[] | null;
  readonly dialog: RecordsDialog | null;
}
