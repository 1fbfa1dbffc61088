import { describe, expect, it } from 'vitest';
import { rowText } from '../../../src/core/chart/row-text.ts';
import { trialFrame } from '../../../src/core/screen/trial-frame.ts';
import { trialView } from '../../../src/core/screen/trial-view.ts';
import { TRIAL_HELP } from '../../../src/core/text/trial-help-text.ts';
import { SCRIPTS, type ScriptedTrial, scripted } from './scripted-trial.ts';

const text = (trial: ScriptedTrial, columns = 80, rows = 24, ascii = false) =>
  trialFrame(trialView(trial.state, { columns, rows, ascii })).map(rowText).join('\n');
const withoutText = Object.keys(SCRIPTS).filter((name) => {
  const { dialog } = scripted(name).state;
  return dialog?.kind !== 'help' && (dialog === null || !('text' in dialog));
});

describe('help on one key', () => {
  it.each(withoutText)(
    '%s: H is in the key line, opens the help, and Esc comes back to where it was',
    (name) => {
      const trial = scripted(name);
      const before = trial.state.dialog;
      const atS = trial.state.nowUs / 1e6;
      expect(
        trialView(trial.state, { columns: 80, rows: 24, ascii: false }).keys.map(({ key }) => key),
      ).toContain('H');
      trial.key('h', atS + 0.2);
      expect(trial.state.dialog?.kind).toBe('help');
      trial.named('escape', atS + 0.5);
      expect(trial.state.dialog).toEqual(before);
    },
  );

  it.each([false, true])('at 80 × 24 (ASCII %s) every key of it can be scrolled to', (ascii) => {
    const trial = scripted('heating').key('h', 49);
    const seen: string[] = [];
    for (let i = 0; i < 30; i++) {
      seen.push(text(trial, 80, 24, ascii));
      trial.named('down', 50 + i);
    }
    for (const [key] of TRIAL_HELP.keys)
      expect(seen.join('\n')).toMatch(new RegExp(`^ .* ${ascii && key === '↑ ↓' ? 'Up Down' : key} `, 'm'));
    expect(seen.join('\n')).toMatch(/no safety device/);
  });

  it('a press that closes is not missed for it', () => {
    const trial = scripted('waiting').key('h', 20).key('c', 21);
    expect(trial.intents.filter((one) => one.kind === 'mark')).toHaveLength(1);
  });
});
