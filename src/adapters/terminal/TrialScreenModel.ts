import { startTrialScreen } from '../../core/screen/start-trial-screen.ts';
import type { TrialIntent } from '../../core/screen/TrialIntent.ts';
import type { TrialScreenEvent } from '../../core/screen/TrialScreenEvent.ts';
import type { TrialScreenSetup, TrialScreenState } from '../../core/screen/TrialScreenState.ts';
import { trialScreenReducer } from '../../core/screen/trial-screen-reducer.ts';

/** Holds the trial screen's state: the program dispatches what happened, the screen reads and dispatches keys. */
export interface TrialScreenModel {
  getState(): TrialScreenState;
  dispatch(event: TrialScreenEvent): void;
  /** Called with every wish of the screen; returns how to stop. */
  onIntent(listener: (intent: TrialIntent) => void): () => void;
}

/** A model in its first state. `nowUs`: host monotonic clock. */
export function createTrialScreenModel(setup: TrialScreenSetup, nowUs: number): TrialScreenModel {
  let state = startTrialScreen(setup, nowUs);
  // A state that could not be worked out is thrown once, and nothing more is made of it.
  let failed = false;
  const listeners = new Set<(intent: TrialIntent) => void>();
  return {
    getState: () => state,
    dispatch(event) {
      if (failed) return;
      failed = true;
      const [next, intents] = trialScreenReducer(state, event);
      state = next;
      failed = false;
      for (const intent of intents) for (const listener of listeners) listener(intent);
    },
    onIntent(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
