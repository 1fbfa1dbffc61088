import { cautionLines } from '../text/cautions.ts';
import { SCREEN_TEXT } from '../text/screen-text.ts';
import { ruleChoices } from './rule-choices.ts';
import type { TrialScreenState } from './TrialScreenState.ts';
import type { DialogView } from './TrialView.ts';

const { questions } = SCREEN_TEXT;

/** The open question, ready to show. */
export function dialogView(state: TrialScreenState): DialogView | null {
  const { dialog } = state;
  switch (dialog?.kind) {
    case undefined:
    case 'runs':
      return null;
    case 'cautions':
      return {
        place: 'cover',
        question: SCREEN_TEXT.questions.cautions,
        lines: cautionLines('not-a-safety-device', 'heat', 'closing', 'fumes', 'probe').map((text) => ({
          text,
          role: 'plain',
        })),
        entry: null,
      };
    case 'quit':
      return { place: 'line', question: questions.quit, lines: [], entry: null };
    case 'note':
      return { place: 'line', question: questions.note, lines: [], entry: dialog.text };
    case 'spoilt':
      return { place: 'line', question: questions.spoilt, lines: [], entry: dialog.text };
    case 'decision': {
      const ask = dialog.decision === 'set-aside' ? questions.setAside : questions.takenIn;
      return { place: 'line', question: ask(dialog.run + 1), lines: [], entry: dialog.text };
    }
    case 'accept-rule':
      return {
        place: 'page',
        question: questions.rule,
        lines: ruleChoices(state).map(({ rule, line }) => ({
          text: `${rule === dialog.rule ? '> ' : '  '}${line}`,
          role: rule === dialog.rule ? 'strong' : 'plain',
        })),
        entry: null,
      };
    case 'accept-reason':
      return { place: 'line', question: questions.ruleReason, lines: [], entry: dialog.text };
    case 'accept-initials':
      return { place: 'line', question: questions.initials, lines: [], entry: dialog.text };
  }
}
