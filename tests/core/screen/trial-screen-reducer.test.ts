import { describe, expect, it } from 'vitest';
import { stateName } from '../../../src/core/screen/state-name.ts';
import { trialScreenReducer } from '../../../src/core/screen/trial-screen-reducer.ts';
import { replayOnScreen } from './replayed-recording.ts';
import { ScriptedTrial, SOME_RUNS, scripted, trialRun, WAITING } from './scripted-trial.ts';

const marks = (trial: ScriptedTrial) =>
  trial.intents.flatMap((i) => (i.kind === 'mark' ? [i.mark.kind] : []));
const bells = (trial: ScriptedTrial) => trial.intents.flatMap((i) => (i.kind === 'bell' ? [i.why] : []));
const type = (trial: ScriptedTrial, text: string, fromS: number) => {
  [...text].forEach((character, i) => {
    const atUs = (fromS + i * 0.02) * 1e6;
    trial.send({ kind: 'input', input: { kind: 'character', character, atUs }, atUs });
  });
  return trial;
};

describe('trialScreenReducer: marks', () => {
  it('C marks press closed at the moment of the key, not when it was understood', () => {
    const trial = new ScriptedTrial().readings(0, 9).key('c', 9.123);
    expect(trial.intents).toEqual([{ kind: 'mark', mark: { kind: 'press-closed' }, atUs: 9_123_000 }]);
  });

  it('takes C once when pressed twice within 1 s, and asks what a second one after 1.1 s means', () => {
    expect(marks(new ScriptedTrial().readings(0, 9).key('c', 9).key('c', 9.9))).toEqual(['press-closed']);
    const again = new ScriptedTrial().readings(0, 9).key('c', 9).key('c', 10.1);
    expect(marks(again)).toEqual(['press-closed']);
    expect(again.state.dialog).toMatchObject({ kind: 'closed-again', askedUs: 10_100_000 });
  });

  it('space marks like C and shares its 1 s', () => {
    expect(marks(new ScriptedTrial().readings(0, 9).key(' ', 9).key('c', 9.5))).toEqual(['press-closed']);
  });

  it('O does nothing without a run and marks opened in one', () => {
    expect(marks(new ScriptedTrial().readings(0, 9).key('o', 9))).toEqual([]);
    expect(marks(scripted('heating').key('o', 49))).toEqual(['opened']);
  });

  it('U takes back the latest mark', () => {
    const trial = new ScriptedTrial().readings(0, 9).key('c', 9).key('u', 9.5);
    expect(trial.intents.at(-1)).toMatchObject({
      kind: 'mark',
      mark: { kind: 'undo', what: 'press-closed' },
    });
    expect(marks(new ScriptedTrial().readings(0, 9).key('u', 9))).toEqual([]);
  });

  it('X asks why; only a reason and Enter spoil the run, Escape leaves it', () => {
    const asked = scripted('heating').key('x', 49);
    expect(marks(asked)).toEqual([]);
    expect(asked.named('enter', 49.5).state.dialog?.kind).toBe('spoilt');
    type(asked, 'probe slipped', 50).named('enter', 51);
    expect(asked.intents.at(-1)).toMatchObject({
      kind: 'mark',
      mark: { kind: 'spoilt', reason: 'probe slipped' },
    });
    expect(marks(scripted('heating').key('x', 49).named('escape', 50))).toEqual([]);
  });

  it('a scan while waiting is handed on whole and marks nothing', () => {
    const trial = type(new ScriptedTrial().readings(0, 9), 'cox-212', 9).named('enter', 9.15);
    expect(trial.intents).toEqual([{ kind: 'scan', text: 'cox-212', atUs: 9_000_000 }]);
  });

  it('escape sequences in a scan are neutralised', () => {
    const trial = type(new ScriptedTrial().readings(0, 9), 'a\u009b31mb', 9).named('enter', 9.15);
    const [scan] = trial.intents;
    expect(scan?.kind === 'scan' && /[\u0000-\u001f\u007f-\u009f]/.test(scan.text)).toBe(false);
  });

  it('Q asks first; Y leaves, N stays', () => {
    expect(
      scripted('heating')
        .key('q', 49)
        .intents.filter((i) => i.kind === 'quit'),
    ).toEqual([]);
    expect(scripted('heating').key('q', 49).key('y', 49.5).intents.at(-1)).toEqual({ kind: 'quit' });
    expect(scripted('heating').key('q', 49).key('n', 49.5).state.dialog).toBeNull();
  });
});

describe('trialScreenReducer: run', () => {
  it('rings once at the crossing and once at hold done, though both are reported twice', () => {
    const trial = scripted('hold done');
    trial.report(196, {}, [{ kind: 'hold-done', timeS: 186.7 }]);
    expect(bells(trial)).toEqual(['crossing', 'hold-done']);
  });

  it('calls readings old after 1 s of silence at ten a second', () => {
    const trial = new ScriptedTrial().readings(0, 10);
    expect(stateName(trial.tick(10.85).state)).toBe('waiting');
    expect(stateName(trial.tick(11.0).state)).toBe('stale');
  });

  it.each(['stale', 'fault', 'reader lost'])('never says hold done after a hold with %s in it', (trouble) => {
    const trial = scripted('hold');
    if (trouble === 'stale') trial.tick(110);
    if (trouble === 'fault') trial.readings(101, 103, { faulted: true });
    if (trouble === 'reader lost') {
      trial.send({ kind: 'link', link: { kind: 'lost', sinceUs: 101e6, cause: 'unplugged' }, atUs: 101e6 });
      trial.send({ kind: 'link', link: { kind: 'open' }, atUs: 104e6 });
    }
    expect(stateName(trial.state)).toBe('hold-not-verified');
    trial
      .readings(110, 187)
      .report(187, { phase: 'hold-done', holdCountedS: 120 }, [{ kind: 'hold-done', timeS: 187 }]);
    expect(stateName(trial.state)).toBe('hold-not-verified');
  });

  it('begins the next run clean: marks, crossing and the unverified hold of the last one are gone', () => {
    const trial = scripted('hold not verified');
    trial.report(200, { ...WAITING }, [{ kind: 'run-finished', result: trialRun().result }]);
    const pressClosed = {
      timeS: 300,
      standardUncertaintyS: 0.1,
      by: 'key' as const,
      all: [],
      disagreementS: null,
    };
    trial.report(300, { phase: 'heating', runNumber: 2, pressClosed }, [
      { kind: 'press-closed', pressClosed },
    ]);
    expect(trial.state).toMatchObject({
      holdUnseen: false,
      crossedS: null,
      holdDone: false,
      lastResult: null,
    });
    expect(trial.state.marks).toEqual([{ label: 'closed', timeS: 300 }]);
  });

  it('changes the shown figures at most four times a second at 100 readings a second', () => {
    const trial = new ScriptedTrial();
    const shown = new Set<unknown>();
    for (let i = 0; i < 1000; i++) {
      const reading = {
        timeS: i / 100,
        arrivedUs: i * 10_000,
        values: [{ kind: 'temperature' as const, temperatureC: i }],
      };
      trial.session = { ...trial.session, latestReading: reading };
      trial.report(i / 100, {});
      shown.add(trial.state.shown);
    }
    expect(shown.size).toBeLessThanOrEqual(40);
    expect(shown.size).toBeGreaterThan(35);
  });

  it('keeps memory bounded over two hours of waiting at ten readings a second', () => {
    const trial = new ScriptedTrial();
    for (let i = 0; i < 72_000; i++) {
      const reading = {
        timeS: i / 10,
        arrivedUs: i * 100_000,
        values: [{ kind: 'temperature' as const, temperatureC: 24 }],
      };
      trial.session = { ...trial.session, latestReading: reading };
      trial.report(i / 10, {});
    }
    expect(trial.state.trace.closed.length).toBeLessThanOrEqual(1200);
  });
});

describe('trialScreenReducer: recipe and runs', () => {
  const ready = () => new ScriptedTrial().readings(0, 9).standing(SOME_RUNS, 9);

  it('A pre-selects the stricter rule and asks initials', () => {
    const trial = ready().key('a', 10);
    expect(trial.state.dialog).toEqual({ kind: 'accept-rule', rule: 'next-run' });
    type(trial.named('enter', 11), 'MK', 12).named('enter', 13);
    expect(trial.state.dialog?.kind).toBe('accept-note');
    type(trial, 'North only', 14).named('enter', 15);
    expect(trial.intents.at(-1)).toEqual({
      kind: 'accept-recipe',
      rule: 'next-run',
      ruleReason: null,
      initials: 'MK',
      gaugePsi: null,
      note: 'North only',
    });
  });

  it('choosing the less strict mean rule needs a reason', () => {
    const trial = ready().key('a', 10).named('down', 10.5).named('enter', 11);
    expect(trial.state.dialog).toEqual({ kind: 'accept-reason', rule: 'mean', text: '' });
    expect(trial.named('enter', 11.5).state.dialog?.kind).toBe('accept-reason');
    type(trial, 'margin on press', 12).named('enter', 13);
    type(trial, 'MK', 14).named('enter', 15).named('enter', 16);
    expect(trial.intents.at(-1)).toMatchObject({
      kind: 'accept-recipe',
      rule: 'mean',
      ruleReason: 'margin on press',
    });
  });

  it('A is refused in words while no run counts', () => {
    const trial = new ScriptedTrial().readings(0, 9).key('a', 9);
    expect(trial.state.dialog).toBeNull();
    expect(trial.state.notice?.text).toContain('No run counts');
  });

  it('sets a run aside with a reason, takes in only a suspect one', () => {
    const trial = ready().key('r', 10);
    trial.key('t', 11);
    expect(trial.state.dialog?.kind).toBe('runs');
    trial.named('up', 12).key('t', 13);
    type(trial, 'same as the others', 14).named('enter', 15);
    expect(trial.intents.at(-1)).toEqual({
      kind: 'decide-run',
      run: 2,
      decision: 'taken-in',
      reason: 'same as the others',
    });
    expect(trial.state.dialog).toEqual({ kind: 'runs', selected: 2 });
    trial.named('down', 16).key('x', 17);
    type(trial, 'probe moved', 18).named('enter', 19);
    expect(trial.intents.at(-1)).toEqual({
      kind: 'decide-run',
      run: 3,
      decision: 'set-aside',
      reason: 'probe moved',
    });
  });

  it('cautions hold every key until acknowledged with Enter, once', () => {
    const trial = scripted('cautions').key('c', 6);
    expect(marks(trial)).toEqual([]);
    trial.named('enter', 7).key('c', 8);
    expect(trial.intents.map((i) => i.kind)).toEqual(['cautions-acknowledged', 'mark']);
  });

  it('never changes the state it is given', () => {
    const frozen = Object.freeze(scripted('heating').state);
    expect(() => trialScreenReducer(frozen, { kind: 'tick', atUs: 60e6 })).not.toThrow();
  });
});

describe('trialScreenReducer: two bond-line probes in a shipped recording', () => {
  it('rings once, when the slower probe has crossed, and marks its crossing within 0.1 s of the truth', () => {
    const rung: { why: string; atS: number }[] = [];
    let state = null as ScriptedTrial['state'] | null;
    const { head, state: end } = replayOnScreen('wb-150-north-run-1', (next, event) => {
      if (state !== null) {
        for (const intent of trialScreenReducer(state, event)[1]) {
          if (intent.kind === 'bell') rung.push({ why: intent.why, atS: event.atUs / 1e6 });
        }
      }
      state = next;
    });
    expect(rung.map((r) => r.why)).toEqual(['crossing', 'hold-done']);
    const truthS = head.truth?.probeCrossingS ?? Number.NaN;
    expect(rung[0]?.atS).toBeGreaterThan(truthS);
    expect(rung[0]?.atS).toBeLessThan(truthS + 2);
    const mark = end.marks.find((m) => m.label === 'crossing');
    expect(Math.abs((mark?.timeS ?? Number.NaN) - truthS)).toBeLessThan(0.1);
  });
});

describe('a scan during a run', () => {
  const scan = (trial: ScriptedTrial, text: string) =>
    type(trial, text, 50).named('enter', 50 + text.length * 0.02);

  it('of another assembly warns that this trial is of WB-212, and marks nothing', () => {
    const trial = scan(scripted('heating'), 'WB-150');
    expect(trial.state.notice).toMatchObject({
      text: 'Scanned WB-150, but this trial is of WB-212: wrong part in the press?',
      tone: 'caution',
    });
    expect(trial.intents.filter(({ kind }) => kind === 'mark')).toEqual([]);
  });

  it('of its own assembly, in whatever letters, is said to be right', () => {
    expect(scan(scripted('heating'), 'wb-212').state.notice).toMatchObject({ tone: 'good' });
  });
});
