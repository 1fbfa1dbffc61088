import { RECORDS_TEXT } from '../text/records-text.ts';
import type { RecordsDialog, RecordsState } from './RecordsState.ts';
import { type RecordsStep, stay } from './RecordsStep.ts';

/** A key while a reason, initials or a speed is asked for. Reasons and initials must not be empty. */
export function reduceRecordsDialog(state: RecordsState, dialog: RecordsDialog, name: string): RecordsStep {
  if (name === 'escape') return stay({ ...state, dialog: null });
  const { view } = state;
  if (view.kind !== 'trial') return stay({ ...state, dialog: null });
  if (dialog.kind === 'replay-speed') {
    const speed = RECORDS_TEXT.replaySpeeds.find((one) => one.key === name)?.value;
    return speed === undefined
      ? stay(state)
      : {
          state: { ...state, dialog: null },
          intents: [{ kind: 'replay', trialId: view.trialId, run: view.selected, speed }],
        };
  }
  if (name === 'backspace') return stay({ ...state, dialog: { ...dialog, text: dialog.text.slice(0, -1) } });
  const text = dialog.text.trim();
  if (name !== 'enter' || text === '') return stay(state);
  const closed = { ...state, dialog: null };
  if (dialog.kind === 'initials') {
    const rule = state.loaded!.strictestRule;
    return {
      state: closed,
      intents: [{ kind: 'accept-recipe', trialId: view.trialId, rule, initials: text }],
    };
  }
  const { decision } = dialog;
  return {
    state: closed,
    intents: [{ kind: 'decide-run', trialId: view.trialId, run: view.selected, decision, reason: text }],
  };
}
