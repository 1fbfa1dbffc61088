import { describe, expect, it } from 'vitest';
import { blockText } from '../../../src/core/chart/block-text.ts';
import { rowText } from '../../../src/core/chart/row-text.ts';
import { asciiText } from '../../../src/core/screen/ascii-text.ts';
import { trialFrame } from '../../../src/core/screen/trial-frame.ts';
import { trialView } from '../../../src/core/screen/trial-view.ts';
import { TRIAL_HELP } from '../../../src/core/text/trial-help-text.ts';
import { withOutcome } from './scripted-pages.ts';
import { PAGE_SCRIPTS, SCRIPTS, type ScriptedTrial, scripted, trialRun } from './scripted-trial.ts';

const frame = (trial: ScriptedTrial, columns = 80, rows = 24) =>
  trialFrame(trialView(trial.state, { columns, rows, ascii: false })).map(rowText);
const SIZES = [
  [80, 24],
  [120, 36],
] as const;
const hasBlock = (drawn: readonly string[], words: string, size: 'small' | 'large') =>
  blockText(words, { size, ascii: false }).every((row) => drawn.some((line) => line.includes(row.trimEnd())));

const SAYS: Readonly<Record<string, { readonly block?: string; readonly text: RegExp }>> = {
  'ready check': { block: 'LOOK', text: /LOOK +Ram gauge +94 psi \(648 kPa\), from 84 to 105 psi/ },
  'ready check, probe open': {
    block: 'NOT READY',
    text: /NO +Probes +bond line \(channel 1\): open circuit/,
  },
  'ready check, reason asked': { block: 'NOT READY', text: /Why go on\?[\s\S]*p_/ },
  'ready check done': { block: 'READY', text: /All in order/ },
  // 200 s · ln((135.3 − 24)/8) = 527 s after 40 s of cooling from 160 °C: 9 min, rounded up.
  'cooling between runs': { block: 'COOL 9 MIN', text: /wait about 9 min/ },
  result: {
    block: 'DWELL',
    text: /soak 5\d\.\d s \+ hold 120 s \+ margin 0 s = 17\d\.\d s, rounded up to 17\d s/,
  },
  'result of one run': { block: 'DWELL', text: /PROVISIONAL/ },
  budget: { text: /probe within its tolerance: standard/ },
  overlay: { text: /unusable ones and those set aside/ },
  help: { text: /press closed, at that moment/ },
  'recipe note': { text: /Note to the recipe/ },
};

describe('pages of the trial screen', () => {
  it('every page has a line here that says what it must show', () => {
    expect(Object.keys(SAYS).sort()).toEqual(Object.keys(PAGE_SCRIPTS).sort());
  });

  it.each(Object.entries(SAYS))('%s: says so, at 80 × 24 and 120 × 36', (name, { block, text }) => {
    for (const [columns, rows] of SIZES) {
      const drawn = frame(scripted(name), columns, rows);
      expect(drawn.join('\n')).toMatch(text);
      if (block === undefined) continue;
      expect(hasBlock(drawn, block, 'small') || hasBlock(drawn, block, 'large')).toBe(true);
    }
  });

  it.each(Object.keys(PAGE_SCRIPTS))('%s: no row is cut in a word, at 80 × 24', (name) => {
    for (const row of frame(scripted(name)).slice(0, -1)) {
      // A sentence that fills its row to the last column would have been cut there.
      expect(row.length === 80 && /[a-z]$/.test(row), row).toBe(false);
    }
  });

  it('the result shows the dwell in block digits five rows high: 174 or 175 s by the next-run rule', () => {
    for (const [columns, rows] of SIZES)
      expect(hasBlock(frame(scripted('result'), columns, rows), '175 S', 'large')).toBe(true);
  });

  it('every state of a run has its next action in block letters of three rows', () => {
    for (const name of [
      'no reader',
      'stale',
      'fault',
      'waiting',
      'heating',
      'hold',
      'hold done',
      'opened',
      'run good',
    ]) {
      const view = trialView(scripted(name).state, { columns: 80, rows: 24, ascii: false });
      expect(view.next.length).toBeGreaterThan(3);
      expect(hasBlock(frame(scripted(name)), view.next, 'small'), name).toBe(true);
    }
  });

  it('help at 80 × 24 tells at once that the program is no safety device, and all of what is seen by scrolling', () => {
    for (const ascii of [false, true]) {
      const trial = scripted('help');
      const page = () =>
        trialFrame(trialView(trial.state, { columns: 80, rows: 24, ascii }))
          .map(rowText)
          .join(' ')
          .replace(/\s+/g, ' ');
      const first = page();
      expect(first).toContain('It is no safety device and no interlock');
      for (let i = 0; i < 20; i++) trial.named('down', 300 + i);
      const all = first + page();
      for (const [key, does] of TRIAL_HELP.keys)
        expect(all).toContain(`${ascii ? asciiText(key) : key} ${ascii ? asciiText(does) : does}`);
      for (const line of TRIAL_HELP.seen) expect(all).toContain(line);
    }
  });

  it('no next action tells anyone to move the press', () => {
    for (const name of Object.keys(SCRIPTS)) {
      const { next } = trialView(scripted(name).state, { columns: 80, rows: 24, ascii: false });
      expect(next).not.toMatch(/^(open|close)\b/i);
    }
  });

  it('a run set aside leaves the overlay; the others keep their numbers', () => {
    const trial = scripted('run good');
    const { finished } = trial.state;
    expect(finished).toHaveLength(1);
    const letters = () => {
      const drawn = frame(trial.copy().key('v', 240), 120, 36);
      return drawn.filter((row) => /\S$/.test(row.slice(-1))).map((row) => row.slice(-1));
    };
    expect(letters()).toContain('1');
    withOutcome(trial, 231, [{ ...trialRun({}, { kind: 'set-aside', reason: 'slipped' }), source: '' }]);
    expect(letters()).not.toContain('1');
  });
});
