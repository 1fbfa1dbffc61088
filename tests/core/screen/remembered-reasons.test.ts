import { describe, expect, it } from 'vitest';
import { readyItems } from '../../../src/core/screen/ready-items.ts';
import { trialRun } from './ScriptedTrial.ts';
import { scripted, WAITING } from './scripted-trial.ts';

describe('a reason to go on anyway', () => {
  it('is offered again for the same line before the next run: W and Enter, nothing typed', () => {
    const trial = scripted('ready check, probe open').key('w', 15.1);
    for (const [i, letter] of [...'spare probe'].entries()) trial.key(letter, 15.2 + i / 20);
    trial.named('enter', 15.9);
    const overridden = () => readyItems(trial.state).find(({ name }) => name === 'probes')?.overridden;
    expect(overridden()).toBe('spare probe');
    // A run, and its end: everything is looked at anew.
    const pressClosed = {
      timeS: 16,
      standardUncertaintyS: 0.1,
      by: 'key' as const,
      all: [],
      disagreementS: null,
    };
    trial.report(16, { phase: 'heating', runNumber: 1, pressClosed }, [
      { kind: 'press-closed', pressClosed },
    ]);
    trial.session = { ...trial.session, run: WAITING };
    trial.report(20, {}, [{ kind: 'run-finished', result: trialRun().result }]);
    trial.readings(20, 36, { faulted: true });
    expect(overridden() ?? null).toBeNull();
    if (trial.state.dialog?.kind !== 'ready') trial.named('escape', 36.1).key('k', 36.3);
    trial.key('w', 36.5);
    expect(trial.state.dialog).toMatchObject({ kind: 'ready-reason', item: 'probes', text: 'spare probe' });
    trial.named('enter', 37.5);
    expect(overridden()).toBe('spare probe');
  });
});
