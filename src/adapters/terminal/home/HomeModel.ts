import type { HomeEvent, HomeIntent } from '../../../core/screen-home/HomeEvent.ts';
import type { HomeState } from '../../../core/screen-home/HomeState.ts';
import { homeReducer } from '../../../core/screen-home/home-reducer.ts';

/** Holds the state of the screens around the trial; wishes go to the one who listens. */
export interface HomeModel {
  getState(): HomeState;
  dispatch(event: HomeEvent): void;
  /** Called with every wish of the screens; returns how to stop. */
  onIntent(listener: (intent: HomeIntent) => void): () => void;
  /** Called after every event; returns how to stop. */
  onChange(listener: () => void): () => void;
}

/** A model that starts from `state`. */
export function createHomeModel(start: HomeState): HomeModel {
  let state = start;
  const intentListeners = new Set<(intent: HomeIntent) => void>();
  const changeListeners = new Set<() => void>();
  return {
    getState: () => state,
    dispatch(event) {
      const [next, intents] = homeReducer(state, event);
      state = next;
      for (const listener of changeListeners) listener();
      for (const intent of intents) for (const listener of intentListeners) listener(intent);
    },
    onIntent(listener) {
      intentListeners.add(listener);
      return () => intentListeners.delete(listener);
    },
    onChange(listener) {
      changeListeners.add(listener);
      return () => changeListeners.delete(listener);
    },
  };
}
