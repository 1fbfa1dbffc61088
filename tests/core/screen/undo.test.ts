import { describe, expect, it } from 'vitest';
import { rowText } from '../../../src/core/chart/row-text.ts';
import { trialFrame } from '../../../src/core/screen/trial-frame.ts';
import { trialView } from '../../../src/core/screen/trial-view.ts';
import { DrivenTrial, heatingC } from './driven-trial.ts';

/** Closed at 10 s, opened at 190 s; crosses at the closed form of the heating curve. */
const oneRun = () => new DrivenTrial((timeS) => heatingC(timeS, 10, 190)).until(10).key('c');
const SOAK_S = 3 + 40.5 * Math.log(208 / (232 - 176.667));
const text = (trial: DrivenTrial, columns = 80, rows = 24) =>
  trialFrame(trialView(trial.state, { columns, rows, ascii: false }))
    .map(rowText)
    .join('\n');
const marks = (trial: DrivenTrial) => trial.intents.flatMap((i) => (i.kind === 'mark' ? [i.mark.kind] : []));
const inChart = (trial: DrivenTrial) => trial.state.marks.map(({ label }) => label);

describe('U 107 s after press closed, in the hold', () => {
  it('asks, saying what would follow; Esc leaves the run good', () => {
    const trial = oneRun().until(117).key('u');
    expect(marks(trial)).toEqual(['press-closed']);
    expect(text(trial)).toMatch(/Take back press closed of 107 s ago\?/);
    expect(text(trial)).toMatch(/timed from the onset and will not count/);
    trial.named('escape').until(190).key('o').until(200);
    expect(trial.results[0]).toMatchObject({ verdict: 'good', reasons: [] });
  });

  it('taken back with Y the run ends suspect, not good, and says how to put the mark back', () => {
    const trial = oneRun().until(117).key('u').until(118).key('y').until(119);
    expect(text(trial)).toMatch(/the run will not\s+count\. P puts it back/);
    expect(text(trial, 120, 36)).toMatch(/P +put mark back/);
    trial.until(190).key('o').until(200);
    expect(trial.results[0]?.verdict).toBe('suspect');
  });

  it('P puts the mark back at its own moment: good, with the whole soak time', () => {
    const trial = oneRun()
      .until(117)
      .key('u')
      .until(118)
      .key('y')
      .until(130)
      .key('p')
      .until(190)
      .key('o')
      .until(200);
    expect(trial.results).toHaveLength(1);
    expect(trial.results[0]).toMatchObject({ verdict: 'good' });
    expect(trial.results[0]?.pressClosed?.timeS).toBeCloseTo(10, 1);
    expect(trial.results[0]?.soakTimeS).toBeCloseTo(SOAK_S, 0);
  });

  it('the mark in the chart then stands at the onset, where the run is timed from, and no longer at 10 s', () => {
    const trial = oneRun().until(117);
    expect(trial.state.marks.find(({ label }) => label === 'closed')?.timeS).toBeCloseTo(10, 1);
    trial.key('u').until(118).key('y').until(119);
    const onsetS = trial.state.session?.run.onset?.timeS;
    expect(trial.state.marks.find(({ label }) => label === 'closed')?.timeS).toBe(onsetS);
  });

  it('C after that asks and offers the moment taken back; no run gets a negative soak time', () => {
    const trial = oneRun().until(117).key('u').until(118).key('y').until(120).key('c').until(121);
    expect(text(trial)).toMatch(/the press closed 111 s ago: put the mark back/);
    expect(marks(trial)).toEqual(['press-closed', 'undo']);
    trial.key('p').until(190).key('o').until(200);
    expect(trial.results[0]).toMatchObject({ verdict: 'good' });
  });

  it('N there begins a run of its own; none of the two is good', () => {
    const trial = oneRun().until(117).key('u').until(118).key('y').until(120).key('c').until(121).key('n');
    trial.until(190).key('o').until(200);
    expect(trial.results.map(({ verdict }) => verdict)).not.toContain('good');
    for (const { soakTimeS } of trial.results) expect(soakTimeS ?? 1).toBeGreaterThan(0);
  });

  it('O is taken although the question stands', () => {
    const trial = oneRun().until(185).key('u').until(190).key('o').until(200);
    expect(trial.results[0]).toMatchObject({ verdict: 'good' });
    expect(trial.results[0]?.openedS).toBeCloseTo(190, 1);
  });

  it('left alone for 20 s the question goes away and nothing has changed', () => {
    expect(oneRun().until(117).key('u').until(138).state.dialog).toBeNull();
  });
});

describe('U where contact and key both marked the closing', () => {
  const both = () =>
    new DrivenTrial((timeS) => heatingC(timeS, 10, 190)).until(10).key('c').contact(true).until(60);

  it('says that the other mark still holds, and so it is: the run stays good', () => {
    const trial = both().key('u');
    expect(text(trial)).toMatch(/the other mark still holds/);
    trial.key('y').until(62);
    expect(trial.state.notice?.text).toMatch(/The other holds/);
    trial.until(190).key('o').until(200);
    expect(trial.results[0]).toMatchObject({ verdict: 'good' });
  });

  it('with both taken back the run does not count; P puts the closing back at its moment', () => {
    const trial = both().key('u').key('y').until(62).key('u').until(63).key('y').until(64);
    expect(trial.state.session?.run.pressClosed?.by).toBe('onset');
    trial.key('p').until(190).key('o').until(200);
    expect(trial.results[0]).toMatchObject({ verdict: 'good' });
    expect(trial.results[0]?.pressClosed?.timeS).toBeCloseTo(10, 1);
  });
});

describe('U soon after a mark', () => {
  it('takes press closed of 2 s ago back at once', () => {
    const trial = oneRun().until(12).key('u').until(12.5);
    expect(marks(trial)).toEqual(['press-closed', 'undo']);
    expect(inChart(trial)).toEqual([]);
  });

  it('an opening taken back leaves the chart, and P puts it back at its moment', () => {
    const trial = oneRun().until(190).key('o').until(192);
    expect(inChart(trial)).toContain('opened');
    trial.key('u').until(192.5);
    expect(inChart(trial)).not.toContain('opened');
    trial.key('p').until(205);
    expect(trial.results[0]?.openedS).toBeCloseTo(190, 1);
  });
});
