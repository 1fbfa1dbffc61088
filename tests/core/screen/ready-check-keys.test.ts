import { describe, expect, it } from 'vitest';
import { parseNotPassed } from '../../../src/core/ready-check/not-passed-note.ts';
import { readyItems } from '../../../src/core/screen/ready-items.ts';
import { trialView } from '../../../src/core/screen/trial-view.ts';
import { atReadyCheck } from './scripted-pages.ts';
import { ScriptedTrial, scripted } from './scripted-trial.ts';

const kinds = (trial: ScriptedTrial) => trial.intents.map((one) => one.kind);
const notes = (trial: ScriptedTrial) =>
  trial.intents.flatMap((one) => (one.kind === 'mark' && one.mark.kind === 'note' ? [one.mark.text] : []));
const pressClosed = {
  timeS: 20,
  standardUncertaintyS: 0.1,
  by: 'key' as const,
  all: [],
  disagreementS: null,
};
const close = (trial: ScriptedTrial) =>
  trial.report(15.9, { phase: 'heating', runNumber: 1, pressClosed }, [
    { kind: 'press-closed', pressClosed },
  ]);

describe('ready check by keys', () => {
  it('comes before the first run, after the cautions', () => {
    const trial = new ScriptedTrial({ readyCheck: true, cautionsAcknowledged: false }).named('enter', 1);
    expect(trial.state.dialog).toEqual({ kind: 'ready', selected: null });
    expect(new ScriptedTrial().state.dialog).toBeNull();
  });

  it('three Enters confirm gauge, tip and bell; the bell rings when its turn comes; a fourth closes the check', () => {
    const trial = scripted('ready check').named('enter', 15.1).readings(15.2, 15.7).named('enter', 15.7);
    expect(kinds(trial)).toEqual(['bell']);
    trial.readings(15.8, 16.3).named('enter', 16.3);
    expect(readyItems(trial.state).map((one) => one.state)).toEqual(Array.from({ length: 9 }, () => 'ready'));
    expect(trial.state.dialog?.kind).toBe('ready');
    trial.readings(16.4, 16.9).named('enter', 16.9);
    expect(trial.state.dialog).toBeNull();
    expect(trial.state.ready.done).toBe(true);
    expect(trial.state.gaugePsi).toBeCloseTo(94.05, 2);
  });

  it('Enter on a line that is not in order confirms nothing and says what to do', () => {
    const trial = scripted('ready check, probe open').named('enter', 15.1);
    expect(trial.state.ready.confirmed).toEqual([]);
    expect(trial.state.notice?.text).toMatch(/Push the plug in/);
  });

  it('a reason to go on is kept in the recording with the run', () => {
    const trial = scripted('ready check, probe open').key('w', 15.1);
    for (const [i, letter] of [...'spare probe'].entries()) trial.key(letter, 15.2 + i / 20);
    trial.named('enter', 15.9);
    expect(readyItems(trial.state)[1]).toMatchObject({ name: 'probes', overridden: 'spare probe' });
    close(trial);
    expect(notes(trial)).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^Ready check, Probes: .*open circuit.* because: spare probe$/),
      ]),
    );
  });

  it('C marks press closed in the middle of the check, and what was not looked at is noted', () => {
    const trial = scripted('ready check').named('enter', 15.1).key('c', 15.3);
    expect(trial.intents.filter((one) => one.kind === 'mark')).toHaveLength(1);
    expect(trial.state.dialog).toBeNull();
    close(trial);
    expect(notes(trial)).toEqual([
      'Ready check: ram gauge 94 psi (648 kPa) confirmed.',
      'Ready check not finished: probe tip, bell.',
    ]);
  });

  it('a contact that closes gives way to the run: the check leaves the screen', () => {
    expect(close(scripted('ready check')).state.dialog).toBeNull();
  });

  it('after a run everything but the bell is asked anew', () => {
    const trial = scripted('ready check done').named('enter', 16);
    close(trial);
    const [{ result }] = [{ result: scripted('run good').state.lastResult }];
    if (result === null) throw new Error('no result');
    trial.report(200, { phase: 'waiting', pressClosed: null }, [{ kind: 'run-finished', result }]);
    expect(trial.state.ready).toEqual({ confirmed: ['bell'], overridden: {}, done: false });
  });

  it('a pedal that types a blank marks press closed as a pedal', () => {
    const trial = atReadyCheck().readings(0, 5).named('escape', 5.1);
    trial.key(' ', 6);
    expect(trial.intents.at(-1)).toEqual({
      kind: 'mark',
      mark: { kind: 'press-closed' },
      atUs: 6e6,
      by: 'pedal',
    });
  });

  it('a held Enter, six times in 0.6 s, confirms one line and says so', () => {
    const trial = scripted('ready check');
    for (let i = 0; i < 6; i++) trial.named('enter', 15.1 + i / 10);
    expect(trial.state.ready.confirmed).toEqual(['gauge']);
    expect(trial.state.dialog?.kind).toBe('ready');
    expect(trial.state.notice?.text).toMatch(/One Enter, one confirmation/);
    expect(trial.readings(15.7, 16.3).named('enter', 16.3).state.ready.confirmed).toEqual([
      'gauge',
      'placement',
    ]);
  });

  it('an Enter held on from the cautions confirms nothing', () => {
    const trial = new ScriptedTrial({ readyCheck: true, cautionsAcknowledged: false });
    trial.named('enter', 1).named('enter', 1.1).named('enter', 1.2);
    expect(trial.state.ready.confirmed).toEqual([]);
  });

  it('what was gone over stays in the record although the probe was put right afterwards', () => {
    const trial = scripted('ready check, probe open').key('w', 15.1);
    for (const [i, letter] of [...'spare'].entries()) trial.key(letter, 15.2 + i / 20);
    trial.named('enter', 15.9).readings(16, 40);
    expect(readyItems(trial.state)[1]?.code).toBe('probes-sound');
    close(trial);
    expect(notes(trial)).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^Ready check, Probes: .*open circuit.* because: spare$/),
      ]),
    );
  });

  it('a closing over an open probe is recorded, told as not passed, and W asks why while the run goes on', () => {
    const trial = scripted('ready check, probe open').key('c', 15.1);
    expect(trial.intents.filter((one) => one.kind === 'mark')).toHaveLength(1);
    close(trial);
    const [note] = notes(trial).filter((text) => text.startsWith('Ready check not passed'));
    expect(parseNotPassed(note ?? '')).toMatchObject({
      atProbe: true,
      found: expect.stringMatching(/^probes: .*open circuit/),
    });
    const view = trialView(trial.state, { columns: 80, rows: 24, ascii: false });
    expect(view.facts.map((fact) => fact.text).join('\n')).toMatch(
      /Ready check not passed: probes.*W: why go on\?/,
    );
    expect(view.keys[0]).toEqual({ key: 'W', does: 'why go on' });
    trial.key('w', 17);
    for (const [i, letter] of [...'old probe'].entries()) trial.key(letter, 17.2 + i / 20);
    trial.named('enter', 18);
    expect(notes(trial).at(-1)).toBe('Ready check not passed, gone on because: old probe');
    expect(trial.state.notPassed).toBeNull();
  });

  it('asks for nothing where every line was settled', () => {
    const trial = scripted('ready check done').named('enter', 16);
    close(trial);
    expect(trial.state.notPassed).toBeNull();
    expect(notes(trial).filter((text) => /not passed/.test(text))).toEqual([]);
  });
});
