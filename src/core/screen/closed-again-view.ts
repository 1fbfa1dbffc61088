import { CLOSED_AGAIN } from '../text/closed-again-text.ts';
import { secondsText } from '../text/units-text.ts';
import { isMarked } from './closed-again.ts';
import { elapsedS } from './elapsed-s.ts';
import { gloveChoices } from './glove-choices.ts';
import type { Dialog, TrialScreenState } from './TrialScreenState.ts';
import type { DialogView } from './TrialView.ts';

/** The question under the figure, which stays in sight: what press closed means in a run that has a mark, or had one. */
export function closedAgainView(
  state: TrialScreenState,
  dialog: Extract<Dialog, { readonly kind: 'closed-again' }>,
): DialogView {
  const { keep, putBack, correct, newRun, opened } = CLOSED_AGAIN.choices;
  const { takenBack, nowUs } = state;
  const backUs = takenBack?.kind === 'press-closed' ? takenBack.atUs : null;
  const choices = [
    keep,
    ...(backUs === null
      ? []
      : [{ ...putBack, does: putBack.does(secondsText(Math.max(0, nowUs - backUs) / 1e6, 0)) }]),
    ...(dialog.heating ? [correct] : []),
    newRun,
    opened,
  ];
  const elapsed = elapsedS(state) ?? 0;
  const ago = secondsText(Math.max(0, elapsed - (nowUs - dialog.askedUs) / 1e6), 0);
  const { question } = CLOSED_AGAIN;
  return {
    place: 'page',
    question: isMarked(state)
      ? question[dialog.by](ago)
      : backUs === null
        ? question.unmarked
        : question.takenBack,
    lines: [],
    entry: null,
    draw: ({ rows }) => gloveChoices(choices, rows),
  };
}
