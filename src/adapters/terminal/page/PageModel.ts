import type { RawInput } from '../../../core/screen/classify-input.ts';
import type { ShellView } from '../../../core/screen-shell/ShellView.ts';

/** A live page of the program: its reducer's state behind it, wishes told to who listens. */
export interface PageModel<State, Event, Intent> {
  getState(): State;
  dispatch(event: Event | PageEvent): void;
  /** Called with every wish; returns how to stop. */
  onIntent(listener: (intent: Intent | PageIntent) => void): () => void;
  view(): ShellView;
}

/** What every live page takes. */
export type PageEvent =
  | { readonly kind: 'input'; readonly input: RawInput; readonly atUs: number }
  | { readonly kind: 'tick'; readonly atUs: number };

/** What the page itself does with a wish; any other is its owner's. */
export interface PageIntent {
  readonly kind: string;
}

/** A model from a pure reducer and a pure view. */
export function createPageModel<State, Event, Intent extends PageIntent>(
  start: State,
  reducer: (state: State, event: Event | PageEvent) => readonly [State, readonly Intent[]],
  view: (state: State) => ShellView,
): PageModel<State, Event, Intent> {
  let state = start;
  const listeners = new Set<(intent: Intent | PageIntent) => void>();
  return {
    getState: () => state,
    dispatch(event) {
      const [next, intents] = reducer(state, event);
      state = next;
      for (const intent of intents) for (const listener of listeners) listener(intent);
    },
    onIntent(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    view: () => view(state),
  };
}
