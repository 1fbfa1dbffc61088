import { type Reduced, reduceKey } from './reduce-key.ts';
import type { Dialog, TrialScreenState } from './TrialScreenState.ts';

/** A key on a page that only shows: to another page, to accepting, or back. */
export function reducePageKey(
  state: TrialScreenState,
  page: 'result' | 'budget' | 'overlay',
  name: string,
  atUs: number,
): Reduced {
  const show = (dialog: Dialog | null): Reduced => [{ ...state, dialog }, []];
  switch (name) {
    case 'e':
      if (page === 'result' && state.standing.outcome?.budget) return show({ kind: 'budget' });
      return page === 'budget' ? show({ kind: 'result' }) : [state, []];
    case 'v':
      return page === 'overlay' ? show(null) : reduceKey(state, 'v', atUs);
    case 'd':
      return page === 'overlay' || page === 'budget' ? reduceKey(state, 'd', atUs) : [state, []];
    case 'a':
      return reduceKey({ ...state, dialog: null }, 'a', atUs);
    case 'f':
      return reduceKey(state, 'f', atUs);
    // Press closed must never be missed for a page that is being read.
    case 'c':
    case 'o':
    case 'space':
      return reduceKey({ ...state, dialog: null }, name, atUs);
    default:
      return [state, []];
  }
}
