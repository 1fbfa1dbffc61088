import type { HomeIntent } from '../screen-home/HomeEvent.ts';
import type { TrialRun } from '../trial/TrialResult.ts';
import type { RecordsState } from './RecordsState.ts';

export interface RecordsStep {
  /** Null: the records are left. */
  readonly state: RecordsState | null;
  readonly intents: readonly HomeIntent[];
  readonly notice?: { readonly text: string; readonly tone: 'quiet' | 'good' | 'caution' };
}

/** The state as it is, without a wish. */
export const stay = (state: RecordsState): RecordsStep => ({ state, intents: [] });

/** Runs of the loaded trial, in the order they were made. */
export function runsOf(state: RecordsState): readonly TrialRun[] {
  return state.loaded?.outcome.runs ?? [];
}
