import type { StyledRow } from '../chart/StyledRow.ts';
import { CLOSED_AGAIN } from '../text/closed-again-text.ts';
import { secondsText } from '../text/units-text.ts';
import { elapsedS } from './elapsed-s.ts';
import type { Dialog, TrialScreenState } from './TrialScreenState.ts';
import type { DialogView } from './TrialView.ts';

const KEY_COLUMNS = 9;

/** The question under the figure, which stays in sight: one choice to a line, far apart, its key as a wide field. */
export function closedAgainView(
  state: TrialScreenState,
  dialog: Extract<Dialog, { readonly kind: 'closed-again' }>,
): DialogView {
  const { keep, correct, newRun, opened } = CLOSED_AGAIN.choices;
  const choices = [keep, ...(dialog.heating ? [correct] : []), newRun, opened];
  const elapsed = elapsedS(state) ?? 0;
  const ago = secondsText(Math.max(0, elapsed - (state.nowUs - dialog.askedUs) / 1e6), 0);
  return {
    place: 'page',
    question: CLOSED_AGAIN.question[dialog.by](ago),
    lines: [],
    entry: null,
    draw: ({ rows }) => {
      const apart = rows >= 2 * choices.length - 1;
      return choices.flatMap(({ key, does }, i): StyledRow[] => [
        ...(apart && i > 0 ? [[]] : []),
        [
          { text: '  ', role: 'plain' },
          { text: key.padStart(Math.floor((KEY_COLUMNS + key.length) / 2)).padEnd(KEY_COLUMNS), role: 'key' },
          { text: `  ${does}`, role: 'strong' },
        ],
      ]);
    },
  };
}
