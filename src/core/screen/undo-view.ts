import { UNDO_TEXT } from '../text/undo-text.ts';
import { secondsText } from '../text/units-text.ts';
import { gloveChoices } from './glove-choices.ts';
import type { Dialog, TrialScreenState } from './TrialScreenState.ts';
import type { DialogView } from './TrialView.ts';
import { otherMarkHolds } from './undo-mark.ts';

/** The question before a mark of some seconds ago is taken back, and what would follow. */
export function undoView(
  state: TrialScreenState,
  dialog: Extract<Dialog, { readonly kind: 'undo' }>,
): DialogView {
  const sinceUs = dialog.what === 'press-closed' ? state.closedMarksUs.at(-1) : state.markKeyUs.x;
  const ago = sinceUs === undefined ? null : secondsText(Math.max(0, (state.nowUs - sinceUs) / 1e6), 0);
  const corrected = dialog.what === 'press-closed' && state.closedMarksUs.length > 1;
  const { keep, takeBack } = UNDO_TEXT.choices;
  const other = dialog.what === 'press-closed' && otherMarkHolds(state);
  const does = other
    ? UNDO_TEXT.otherHolds
    : corrected
      ? UNDO_TEXT.earlierHolds
      : UNDO_TEXT.follows[dialog.what];
  return {
    place: 'page',
    question: UNDO_TEXT.question(dialog.what, ago),
    lines: [],
    entry: null,
    draw: ({ rows }) => gloveChoices([keep, { ...takeBack, does: `${takeBack.does} ${does}` }], rows),
  };
}
