import { MARK_LABEL } from '../text/screen-text.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

/** The chart's marks of an open run follow its state: one that was taken back or withdrawn leaves the chart. */
export function marksAsTheyStand(state: TrialScreenState): TrialScreenState {
  const run = state.session?.run;
  if (run === undefined || run.phase === 'waiting' || state.marks.length === 0) return state;
  const closedS = run.pressClosed?.timeS;
  const marks = state.marks.flatMap((mark) => {
    switch (mark.label) {
      case MARK_LABEL.closed:
        return closedS === undefined ? [] : [closedS === mark.timeS ? mark : { ...mark, timeS: closedS }];
      case MARK_LABEL.crossing:
        return run.finalCrossing === null && run.provisionalCrossing === null ? [] : [mark];
      case MARK_LABEL.opened:
        return run.phase === 'opened' ? [mark] : [];
      default:
        return [mark];
    }
  });
  const same = marks.length === state.marks.length && marks.every((mark, i) => mark === state.marks[i]);
  return same ? state : { ...state, marks };
}
