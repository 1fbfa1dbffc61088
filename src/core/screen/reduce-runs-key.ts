import { SCREEN_TEXT } from '../text/screen-text.ts';
import { withNotice } from './notice.ts';
import type { Reduced } from './reduce-key.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

/** A key while a run is being chosen: move, set aside or take in (each asks why), or back to its verdict. */
export function reduceRunsKey(
  state: TrialScreenState,
  selected: number,
  name: string,
  atUs: number,
): Reduced {
  const { runs } = state.standing;
  const run = runs[selected];
  if (name === 'up' || name === 'down') {
    const wanted = Math.min(runs.length - 1, Math.max(0, selected + (name === 'up' ? -1 : 1)));
    return [{ ...state, dialog: { kind: 'runs', selected: wanted } }, []];
  }
  if (name === 'r') return [{ ...state, dialog: null }, []];
  if (run === undefined) return [state, []];
  switch (name) {
    case 'x':
      return [{ ...state, dialog: { kind: 'decision', run: selected, decision: 'set-aside', text: '' } }, []];
    case 't':
      return run.result.verdict === 'suspect'
        ? [{ ...state, dialog: { kind: 'decision', run: selected, decision: 'taken-in', text: '' } }, []]
        : [withNotice(state, SCREEN_TEXT.questions.onlySuspect, 'caution', atUs), []];
    case 'b':
      return [state, [{ kind: 'decide-run', run: selected, decision: 'automatic', reason: '' }]];
    default:
      return [state, []];
  }
}
