import { cautionLines } from '../text/cautions.ts';
import { READY_PAGE, READY_TITLE } from '../text/ready-text.ts';
import { RESULT_PAGE } from '../text/result-text.ts';
import { SCREEN_TEXT } from '../text/screen-text.ts';
import { TRIAL_HELP } from '../text/trial-help-text.ts';
import { closedAgainView } from './closed-again-view.ts';
import { budgetPage } from './pages/budget-page.ts';
import { helpPage } from './pages/help-page.ts';
import { overlayPage } from './pages/overlay-page.ts';
import type { DrawPage } from './pages/PageSize.ts';
import { readyPage } from './pages/ready-page.ts';
import { resultPage } from './pages/result-page.ts';
import { runsPage } from './pages/runs-page.ts';
import { ruleChoices } from './rule-choices.ts';
import type { TrialScreenState } from './TrialScreenState.ts';
import type { DialogView } from './TrialView.ts';
import { undoView } from './undo-view.ts';

const { questions } = SCREEN_TEXT;

/** The open question, ready to show. */
export function dialogView(state: TrialScreenState): DialogView | null {
  const { dialog } = state;
  switch (dialog?.kind) {
    case undefined:
      return null;
    case 'runs':
      return cover(SCREEN_TEXT.pages.runs, runsPage(state));
    case 'ready':
      return cover(READY_PAGE.title, readyPage(state));
    case 'result':
      return cover(state.setup.simulated ? RESULT_PAGE.simulated : RESULT_PAGE.title, resultPage(state));
    case 'budget':
      return cover(SCREEN_TEXT.pages.budget, budgetPage(state));
    case 'overlay':
      return cover(RESULT_PAGE.overlayTitle, overlayPage(state));
    case 'help':
      return cover(TRIAL_HELP.title, helpPage(dialog.scroll));
    case 'ready-reason':
      return {
        ...cover(READY_PAGE.reason(READY_TITLE[dialog.item]), readyPage(state)),
        entry: dialog.text,
      };
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
      return {
        place: 'line',
        question: state.setup.replay !== true ? questions.quit : questions.quitReplay,
        lines: [],
        entry: null,
      };
    case 'closed-again':
      return closedAgainView(state, dialog);
    case 'undo':
      return undoView(state, dialog);
    case 'not-passed':
      return {
        place: 'line',
        question: questions.notPassed(state.notPassed ?? ''),
        lines: [],
        entry: dialog.text,
      };
    case 'note':
      return { place: 'line', question: questions.note, lines: [], entry: dialog.text };
    case 'spoilt':
      return { place: 'line', question: questions.spoilt, lines: [], entry: dialog.text };
    case 'decision': {
      const ask = dialog.decision === 'set-aside' ? questions.setAside : questions.takenIn;
      return { ...cover(ask(dialog.run + 1), runsPage(state)), entry: dialog.text };
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
    case 'accept-note':
      return { place: 'line', question: questions.recipeNote, lines: [], entry: dialog.text };
  }
}

function cover(question: string, draw: DrawPage): DialogView {
  return { place: 'cover', question, lines: [], entry: null, draw };
}
