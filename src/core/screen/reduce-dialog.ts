import { strictestRule } from '../recipe/strictest-rule.ts';
import { CLOSED_AGAIN } from '../text/closed-again-text.ts';
import { READY_PAGE } from '../text/ready-text.ts';
import { SCREEN_TEXT } from '../text/screen-text.ts';
import type { DwellRule } from '../trial/TrialResult.ts';
import { reduceClosedAgain } from './closed-again.ts';
import { markTaken } from './mark-taken.ts';
import { withNotice } from './notice.ts';
import { type Reduced, reduceKey } from './reduce-key.ts';
import { reducePageKey } from './reduce-page-key.ts';
import { openReadyCheck, overrideItem, reduceReadyKey } from './reduce-ready-key.ts';
import { reduceRunsKey } from './reduce-runs-key.ts';
import { ruleChoices } from './rule-choices.ts';
import { firstDialog } from './start-trial-screen.ts';
import type { Dialog, TrialScreenState } from './TrialScreenState.ts';
import { reduceUndoAnswer } from './undo-mark.ts';

const LONGEST_TEXT = 200;
/** The help has no more rows than this in the smallest window. */
const HELP_ROWS = 40;

/** Pages and questions by single keys from which H leads to the help and Esc back again. */
const HAS_HELP: ReadonlySet<Dialog['kind']> = new Set([
  'cautions',
  'ready',
  'runs',
  'result',
  'budget',
  'overlay',
  'accept-rule',
  'quit',
  'undo',
  'closed-again',
]);

type TextDialog = Extract<Dialog, { readonly text: string }>;

/** Whether the open question takes typed text; then characters are text at once and never keys. */
export function takesText(dialog: Dialog | null): dialog is TextDialog {
  return dialog !== null && 'text' in dialog;
}

/** A character typed into the open question. */
export function typeInto(state: TrialScreenState, dialog: TextDialog, character: string): TrialScreenState {
  if (dialog.text.length >= LONGEST_TEXT || character < ' ' || character === '\u007f') return state;
  return { ...state, dialog: { ...dialog, text: dialog.text + character } };
}

/** A key while a question is open. Only the answer keys do anything; nothing is destroyed by one key. */
export function reduceDialog(state: TrialScreenState, dialog: Dialog, name: string, atUs: number): Reduced {
  if (name === 'escape' && dialog.kind === 'ready-reason') return openReadyCheck(state);
  if (name === 'escape' && dialog.kind === 'budget') return [{ ...state, dialog: { kind: 'result' } }, []];
  if (name === 'escape' && dialog.kind === 'closed-again')
    return [withNotice({ ...state, dialog: null }, CLOSED_AGAIN.kept, 'quiet', atUs), []];
  if (name === 'escape' && dialog.kind === 'help') return [{ ...state, dialog: dialog.over ?? null }, []];
  if (name === 'h' && HAS_HELP.has(dialog.kind))
    return [{ ...state, dialog: { kind: 'help', over: dialog } }, []];
  if (name === 'escape' && dialog.kind !== 'cautions') return [{ ...state, dialog: null }, []];
  if (takesText(dialog) && name === 'backspace') {
    return [{ ...state, dialog: { ...dialog, text: dialog.text.slice(0, -1) } }, []];
  }
  switch (dialog.kind) {
    case 'cautions': {
      if (name !== 'enter') return [state, []];
      const [next, intents] =
        firstDialog(state.setup) === null
          ? [{ ...state, dialog: null }, []]
          : openReadyCheck(withEnter(state, atUs));
      return [next, [{ kind: 'cautions-acknowledged', atUs }, ...intents]];
    }
    case 'closed-again':
      return reduceClosedAgain(state, dialog, name, atUs);
    case 'undo':
      return reduceUndoAnswer(state, dialog, name, atUs);
    case 'ready':
      return reduceReadyKey(state, dialog.selected, name, atUs);
    case 'result':
    case 'budget':
    case 'overlay':
      return reducePageKey(state, dialog.kind, name, atUs);
    case 'help':
      return reduceHelpKey(state, dialog, name, atUs);
    case 'quit':
      if (name === 'n') return [{ ...state, dialog: null }, []];
      return name === 'y' ? [state, [{ kind: 'quit' }]] : [state, []];
    case 'runs':
      return reduceRunsKey(state, dialog.selected, name, atUs);
    case 'accept-rule': {
      const choices = ruleChoices(state).map((choice) => choice.rule);
      const at = choices.indexOf(dialog.rule);
      if (name === 'up' || name === 'down') {
        const rule = choices[(at + (name === 'up' ? choices.length - 1 : 1)) % choices.length] ?? dialog.rule;
        return [{ ...state, dialog: { kind: 'accept-rule', rule } }, []];
      }
      if (name !== 'enter') return [state, []];
      const { statistics } = state.standing;
      const strict = statistics === null || strictestRule(statistics) === dialog.rule;
      return strict
        ? [{ ...state, dialog: askInitials(state, dialog.rule, null) }, []]
        : [{ ...state, dialog: { kind: 'accept-reason', rule: dialog.rule, text: '' } }, []];
    }
    default:
      return name === 'enter' ? submit(state, dialog, atUs) : [state, []];
  }
}

/** Help scrolls by the arrow keys; press closed and opened are never missed for it. */
function reduceHelpKey(
  state: TrialScreenState,
  dialog: Extract<Dialog, { readonly kind: 'help' }>,
  name: string,
  atUs: number,
): Reduced {
  switch (name) {
    case 'up':
    case 'down': {
      const scroll = Math.min(HELP_ROWS, Math.max(0, (dialog.scroll ?? 0) + (name === 'up' ? -1 : 1)));
      return [{ ...state, dialog: { ...dialog, scroll } }, []];
    }
    case 'h':
      return [{ ...state, dialog: dialog.over ?? null }, []];
    case 'c':
    case 'o':
    case 'space':
      return dialog.over?.kind === 'cautions'
        ? [state, []]
        : reduceKey({ ...state, dialog: null }, name, atUs);
    case 'f':
      return reduceKey(state, name, atUs);
    default:
      return [state, []];
  }
}

/** Enter in a question that takes text. Reasons and initials must not be empty. */
function submit(state: TrialScreenState, dialog: TextDialog, atUs: number): Reduced {
  const text = dialog.text.trim();
  const closed = { ...state, dialog: null };
  if (dialog.kind === 'note') {
    if (text === '') return [closed, []];
    return [
      withNotice(closed, SCREEN_TEXT.noted, 'good', atUs),
      [{ kind: 'mark', mark: { kind: 'note', text }, atUs }],
    ];
  }
  if (dialog.kind === 'accept-note') {
    const { rule, ruleReason, initials } = dialog;
    return [
      closed,
      [{ kind: 'accept-recipe', rule, ruleReason, initials, gaugePsi: state.gaugePsi, note: text }],
    ];
  }
  if (text === '') return [state, []];
  switch (dialog.kind) {
    case 'spoilt':
      return markTaken(closed, 'x', { kind: 'spoilt', reason: text }, atUs);
    case 'decision':
      return [
        { ...state, dialog: { kind: 'runs', selected: dialog.run } },
        [{ kind: 'decide-run', run: dialog.run, decision: dialog.decision, reason: text }],
      ];
    case 'not-passed':
      return [
        withNotice({ ...closed, notPassed: null }, SCREEN_TEXT.noted, 'good', atUs),
        [{ kind: 'mark', mark: { kind: 'note', text: READY_PAGE.goneOn(text) }, atUs }],
      ];
    case 'ready-reason':
      return overrideItem(withEnter(closed, atUs), dialog.item, text);
    case 'accept-reason': {
      return [{ ...state, dialog: askInitials(state, dialog.rule, text) }, []];
    }
    case 'accept-initials': {
      const { rule, ruleReason } = dialog;
      const next = { kind: 'accept-note' as const, rule, ruleReason, initials: text, text: '' };
      return [{ ...state, dialog: next }, []];
    }
  }
}

/** Enter was pressed here: the same press, held, confirms nothing in the ready check. */
function withEnter(state: TrialScreenState, atUs: number): TrialScreenState {
  return { ...state, markKeyUs: { ...state.markKeyUs, enter: atUs } };
}

/** Initials are offered where they are known already; a note may follow. */
function askInitials(state: TrialScreenState, rule: DwellRule, ruleReason: string | null): Dialog {
  return { kind: 'accept-initials', rule, ruleReason, text: state.setup.initials ?? '' };
}
