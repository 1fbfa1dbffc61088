import { describe, expect, it } from 'vitest';
import { rowText } from '../../../src/core/chart/row-text.ts';
import { trialFrame } from '../../../src/core/screen/trial-frame.ts';
import { trialView } from '../../../src/core/screen/trial-view.ts';
import { DrivenTrial, heatingC } from './driven-trial.ts';
import { ScriptedTrial } from './scripted-trial.ts';

/** Crossing of the brief's curve after closing at 10 s, closed form. */
const CROSSED_S = 10 + 3 + 40.5 * Math.log(208 / (232 - 176.667));

describe('a hold that is not verified', () => {
  it('shows the seconds seen of it in the large figure: 3 s of silence are not among them', () => {
    const silent = (timeS: number) => (timeS > 80 && timeS < 83 ? null : heatingC(timeS, 10, 260));
    const trial = new DrivenTrial(silent).until(10).key('c').until(140);
    expect(trial.name).toBe('hold-not-verified');
    const { figure } = trialView(trial.state, { columns: 80, rows: 24, ascii: false });
    expect(figure.unit).toBe('s');
    expect(Math.abs(Number(figure.text) - (140 - CROSSED_S - 3))).toBeLessThan(1.5);
    expect(figure.caption).toBe('seen of 120 s hold');
    expect(figure.below).toMatch(/^bond line \d+\.\d °F/);
  });

  it('with one of two probes open the figure counts no temperature as the bond line, and the other one is told as such', () => {
    const trial = new ScriptedTrial().readings(0, 10).close().readings(10, 75).cross();
    trial.readings(75, 90, { faulted: true, holdFromS: 65 });
    const view = trialView(trial.state, { columns: 80, rows: 24, ascii: false });
    expect(view.state.name).toBe('hold-not-verified');
    expect(view.figure.unit).toBe('s');
    expect(view.figure.below).toMatch(/^others' coldest \d+\.\d °F$/);
    for (const [columns, rows] of [
      [80, 24],
      [120, 36],
    ] as const)
      for (const ascii of [false, true]) {
        const frame = trialFrame(trialView(trial.state, { columns, rows, ascii })).map(rowText).join('\n');
        expect(frame).toMatch(/seen of 120 s hold/);
        expect(frame).toMatch(/others' coldest \d+\.\d/);
      }
  });

  it('while heating an open probe leaves --- and the coldest of the others beside it', () => {
    const trial = new ScriptedTrial().readings(0, 10).close().readings(10, 40, { faulted: true });
    const { figure } = trialView(trial.state, { columns: 80, rows: 24, ascii: false });
    expect(figure.text).toBe('---');
    expect(figure.caption).toMatch(/^others' coldest/);
  });
});
