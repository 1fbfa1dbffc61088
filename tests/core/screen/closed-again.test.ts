import { describe, expect, it } from 'vitest';
import { rowText } from '../../../src/core/chart/row-text.ts';
import { trialFrame } from '../../../src/core/screen/trial-frame.ts';
import { trialView } from '../../../src/core/screen/trial-view.ts';
import { DrivenTrial, heatingC } from './driven-trial.ts';
import { scripted } from './scripted-trial.ts';

/** Closed at 10 s, opened at 190 s: crosses 43.4 s + 3 s … after closing (closed form below). */
const oneRun = () => new DrivenTrial((timeS) => heatingC(timeS, 10, 190)).until(10);
const SOAK_S = 3 + 40.5 * Math.log(208 / (232 - 176.667));
const marks = (trial: DrivenTrial) => trial.intents.flatMap((i) => (i.kind === 'mark' ? [i.mark.kind] : []));
const text = (trial: DrivenTrial, columns = 80, rows = 24) =>
  trialFrame(trialView(trial.state, { columns, rows, ascii: false }))
    .map(rowText)
    .join('\n');

describe('press closed once more in a marked run', () => {
  it('by key C at 30 s asks, marks nothing, and with Esc the run stays good with its soak time', () => {
    const trial = oneRun().key('c').until(40).key('c').until(43);
    expect(marks(trial)).toEqual(['press-closed']);
    expect(trial.state.dialog).toMatchObject({ kind: 'closed-again', by: 'key', heating: true });
    expect(text(trial)).toMatch(/Press closed is marked already, 30 s before/);
    trial.named('escape').until(190).key('o').until(200);
    expect(trial.results).toHaveLength(1);
    expect(trial.results[0]).toMatchObject({ verdict: 'good', reasons: [] });
    expect(trial.results[0]?.soakTimeS).toBeCloseTo(SOAK_S, 0);
  });

  it('left unanswered for 20 s goes away and changes nothing: O at the end is the opening then', () => {
    const trial = oneRun().key('c').until(40).key('c').until(59);
    expect(trial.state.dialog?.kind).toBe('closed-again');
    expect(trial.until(60.4).state.dialog).toBeNull();
    trial.until(190).key('o').until(200);
    expect(trial.results[0]?.openedS).toBeCloseTo(190, 1);
    expect(trial.results[0]?.verdict).toBe('good');
  });

  it('T corrects the mark to the moment of C, not of the answer: soak time from 14 s, one run, no reason', () => {
    const trial = new DrivenTrial((timeS) => heatingC(timeS, 14, 190)).until(10);
    trial.key('c').until(14).key('c').until(19).key('t').until(190).key('o').until(200);
    expect(trial.results).toHaveLength(1);
    expect(trial.results[0]?.pressClosed).toMatchObject({ timeS: 14, by: 'key' });
    expect(trial.results[0]?.soakTimeS).toBeCloseTo(SOAK_S, 0);
    expect(trial.results[0]?.verdict).toBe('good');
  });

  it('U after T brings the mark before back, at its own moment', () => {
    const trial = oneRun().key('c').until(14).key('c').until(17).key('t').until(20).key('u').until(21);
    expect(trial.state.session?.run.pressClosed?.timeS).toBeCloseTo(10, 2);
    trial.key('u').until(22).key('y').until(23);
    expect(trial.state.session?.run.pressClosed?.by ?? 'none').not.toBe('key');
  });

  it('N begins a new run at the moment of C; the one before ends there', () => {
    const trial = new DrivenTrial((timeS) =>
      timeS < 240 ? heatingC(timeS, 10, 190) : heatingC(timeS, 240, 420),
    );
    trial.until(10).key('c').until(240).key('c').until(246).key('n').until(420).key('o').until(430);
    expect(trial.results.map((one) => one.pressClosed?.timeS)).toEqual([10, 240]);
    expect(trial.results[0]?.endedS).toBeCloseTo(240, 1);
    expect(trial.results[1]?.soakTimeS).toBeCloseTo(SOAK_S, 0);
  });

  it('O marks the opening at the moment of C; U within 5 s of the answer takes it back', () => {
    const trial = oneRun().key('c').until(150).key('c').until(158).key('o').until(160);
    expect(trial.name).toBe('opened');
    trial.key('u').until(161);
    expect(trial.name).toBe('hold');
    trial.until(190).key('o').until(200);
    expect(trial.results.map(({ openedS }) => openedS)).toEqual([190]);
    expect(trial.results[0]?.hold?.countedS).toBeCloseTo(190 - 10 - SOAK_S, 0);
  });

  it('does not offer T after the crossing, and T does nothing then', () => {
    const trial = oneRun().key('c').until(100).key('c').until(101.2);
    expect(text(trial)).not.toMatch(/correct the mark/);
    expect(marks(trial.key('t'))).toEqual(['press-closed']);
    expect(trial.state.dialog?.kind).toBe('closed-again');
  });

  it('C again within 1 s and other keys change nothing in the question', () => {
    const trial = oneRun().key('c').until(40).key('c').until(40.6).key('c').key('x').key('q').key('y');
    expect(trial.state.dialog).toMatchObject({ kind: 'closed-again', askedUs: 40e6 });
    expect(marks(trial)).toEqual(['press-closed']);
  });

  it.each([
    [80, 24],
    [120, 36],
  ])('shows figure, question and each choice on its own line at %i × %i', (columns, rows) => {
    const { state } = scripted('closed again');
    const drawn = trialFrame(trialView(state, { columns, rows, ascii: false })).map(rowText);
    const at = [/ Esc {5}/, / T {6}/, / N {6}/, / O {6}/].map((key) =>
      drawn.findIndex((row) => key.test(row)),
    );
    expect(at.every((row, i) => row > 0 && (i === 0 || row >= (at[i - 1] ?? 0) + 1))).toBe(true);
    expect(drawn.join('\n')).toMatch(/bond line \d+/);
  });
});

describe('a pedal', () => {
  it('that types a blank: first closed, in the hold a question, after the hold opened', () => {
    const trial = oneRun().key(' ').until(100).key(' ').until(102);
    expect(trial.state.dialog).toMatchObject({ kind: 'closed-again', by: 'pedal' });
    trial.named('escape').until(188);
    expect(trial.name).toBe('hold-done');
    trial.until(190).key(' ').until(200);
    expect(marks(trial)).toEqual(['press-closed', 'opened']);
    expect(trial.results[0]).toMatchObject({ verdict: 'good' });
    expect(trial.results[0]?.openedS).toBeCloseTo(190, 1);
  });

  it('on the contact: let go after 0.4 s the run goes on; again at 60 s asks; again after the hold opens', () => {
    const trial = oneRun().contact(true).until(10.4).contact(false).until(70);
    expect(trial.name).toBe('hold');
    trial.contact(true).until(70.6).contact(false).until(72);
    expect(trial.state.dialog).toMatchObject({ kind: 'closed-again', by: 'contact' });
    trial.named('escape').until(190).contact(true).until(190.4).contact(false).until(200);
    expect(trial.results).toHaveLength(1);
    expect(trial.results[0]).toMatchObject({ verdict: 'good' });
    expect(trial.results[0]?.pressClosed).toMatchObject({ by: 'contact', timeS: 10 });
    expect(trial.results[0]?.openedS).toBeCloseTo(190, 1);
  });

  it('on the contact: U takes the closing back, and an opening within 5 s', () => {
    const closed = oneRun().contact(true).until(10.4).contact(false).until(12).key('u').until(12.2);
    expect(closed.name).toBe('waiting');
    const opened = oneRun().contact(true).until(10.4).contact(false).until(188);
    opened.contact(true).until(188.4).contact(false).until(189);
    expect(opened.name).toBe('opened');
    expect(opened.key('u').until(190).name).toBe('hold-done');
  });

  it('trodden twice within 1 s is trodden once', () => {
    const trial = oneRun().contact(true).until(10.2).contact(false).until(10.6).contact(true).until(10.8);
    trial.contact(false).until(12);
    expect(trial.state.dialog).toBeNull();
    expect(trial.state.session?.run.pressClosed?.timeS).toBe(10);
  });

  it('a limit switch held through the run stays what it was: its opening ends the run, its next closing begins one', () => {
    const trial = new DrivenTrial((timeS) =>
      timeS < 240 ? heatingC(timeS, 10, 190) : heatingC(timeS, 240, 420),
    ).until(10);
    trial
      .contact(true)
      .until(190)
      .contact(false)
      .until(240)
      .contact(true)
      .until(420)
      .contact(false)
      .until(430);
    expect(trial.results.map(({ openedS }) => openedS)).toEqual([190, 420]);
    expect(trial.results.map(({ verdict }) => verdict)[0]).toBe('good');
  });
});
