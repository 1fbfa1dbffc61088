import { describe, expect, it } from 'vitest';
import { rowText } from '../../../src/core/chart/row-text.ts';
import { trialFrame } from '../../../src/core/screen/trial-frame.ts';
import { trialView } from '../../../src/core/screen/trial-view.ts';
import { oneMoreLine } from '../../../src/core/text/result-text.ts';
import { RUN_REASON_SHORT } from '../../../src/core/text/run-reasons-short.ts';
import { trialStatistics } from '../../../src/core/trial/trial-statistics.ts';
import { type ScriptedTrial, SOME_RUNS, scripted, trialRun } from './scripted-trial.ts';

const text = (trial: ScriptedTrial, ascii: boolean, columns = 80, rows = 24) =>
  trialFrame(trialView(trial.state, { columns, rows, ascii })).map(rowText).join('\n');
const eight = () => scripted('run good').standing([...SOME_RUNS, ...SOME_RUNS], 235);

describe.each([false, true])('between runs at 80 × 24, ASCII %s', (ascii) => {
  it('says which of 8 runs stand in the table, and the arrow keys show the others', () => {
    const trial = eight();
    expect(text(trial, ascii)).toMatch(/runs \d to 8 of 8 runs/);
    for (let i = 0; i < 12; i++) trial.named('up', 236 + i);
    expect(text(trial, ascii)).toMatch(/runs 1 to \d of 8 runs/);
    expect(text(trial, ascii)).toMatch(/^ +1 +53\.4 s/m);
    for (let i = 0; i < 12; i++) trial.named('down', 250 + i);
    expect(text(trial, ascii)).toMatch(/runs \d to 8 of 8 runs/);
  });

  it('cuts no warning: a sentence too long for its row is told in a few words', () => {
    const trial = eight();
    const rows = text(trial, ascii)
      .split('\n')
      .filter((row) => /suspect/.test(row));
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) {
      expect(row).toMatch(/carrier started warm/);
      expect(row).not.toMatch(/…|\.\.\./);
    }
  });
});

describe('words of a run in one row', () => {
  it('every reason has some, at most 30 letters long', () => {
    for (const words of Object.values(RUN_REASON_SHORT)) expect(words.length).toBeLessThanOrEqual(30);
  });

  it('two runs that agree are not enough: what one more buys is told; three may be', () => {
    const agree = (runs: number) =>
      oneMoreLine(
        trialStatistics(Array.from({ length: runs }, (_, i) => trialRun({ soakTimeS: 53.4 + i / 100 }))),
      );
    expect(agree(2)).toMatch(/^one more run: mean ± /);
    expect(agree(3)).toMatch(/^enough runs/);
  });
});
