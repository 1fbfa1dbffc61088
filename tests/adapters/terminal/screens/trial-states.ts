import {
  ScriptedTrial,
  SOME_RUNS,
  scripted,
  trialRun,
  WAITING,
} from '../../../core/screen/scripted-trial.ts';

/** A run just finished with this verdict. */
function finished(over: Parameters<typeof trialRun>[0]): ScriptedTrial {
  const trial = scripted('opened');
  trial.session = { ...trial.session, run: WAITING };
  const run = trialRun(over);
  trial.report(205, {}, [{ kind: 'run-finished', result: run.result }]);
  return trial.standing([...SOME_RUNS, run], 205).readings(205, 215);
}

const SPOILT = { code: 'spoilt', severity: 'unusable', facts: {}, text: 'probe slipped' } as const;

/** States of the trial screen beside those that the scripts have. */
export const MORE_TRIAL_STATES: Readonly<Record<string, () => ScriptedTrial>> = {
  'run spoilt': () => finished({ verdict: 'unusable', soakTimeS: null, reasons: [SPOILT] }),
  'run unusable': () =>
    finished({
      verdict: 'unusable',
      soakTimeS: null,
      crossing: null,
      reasons: [
        { code: 'target-never-reached', severity: 'unusable', facts: { peakC: 150, targetC: 176.7 } },
      ],
    }),
  'run spoilt while heating': () => scripted('heating').report(48, { spoilt: true }),
  'short to ground': () => {
    const trial = scripted('heating');
    const reading = trial.session.latestReading!;
    const values = [{ kind: 'fault', fault: 'short-to-ground' } as const, ...reading.values.slice(1)];
    trial.session = {
      ...trial.session,
      latestReading: { ...reading, timeS: 48.1, arrivedUs: 48.1e6, values },
    };
    return trial.report(48.5, { latestTimeS: 48.1 });
  },
  'measured, heating': () => new ScriptedTrial({ simulated: false }).readings(0, 10).close().readings(10, 40),
  'note asked': () => scripted('heating').key('n', 49).key('k', 49.2),
  'leaving asked': () => scripted('heating').key('q', 49),
  'help between runs': () => scripted('run good').key('h', 231),
  'setting aside asked': () => scripted('runs chosen').key('x', 231).key('w', 231.2),
  'initials asked': () => scripted('accept recipe').named('enter', 230.5).key('m', 230.7),
  'replay, heating': () =>
    new ScriptedTrial({ replay: true, speed: 20, simulated: false }).readings(0, 10).close().readings(10, 40),
  'replay over': () =>
    new ScriptedTrial({ replay: true, speed: 20 })
      .readings(0, 10)
      .close()
      .readings(10, 40)
      .send({ kind: 'replay-over', atUs: 41e6 }),
  'store full': () =>
    scripted('heating').send({
      kind: 'store',
      store: { p99Ms: null, freeBytes: 0, trouble: 'disk full' },
      atUs: 49e6,
    }),
};
