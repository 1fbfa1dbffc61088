import type { TrialRun } from '../../../src/core/trial/TrialResult.ts';
import { CROSSING_S, ScriptedTrial, SOME_RUNS, trialRun, WAITING } from './ScriptedTrial.ts';
import { pageScripts } from './scripted-pages.ts';

export * from './ScriptedTrial.ts';

/** Every state of a run that the screen must show, by name. */
const RUN_SCRIPTS: Readonly<Record<string, () => ScriptedTrial>> = {
  cautions: () => new ScriptedTrial({ cautionsAcknowledged: false }).readings(0, 5),
  'no reader': () => new ScriptedTrial().tick(3),
  'reader lost': () =>
    new ScriptedTrial()
      .readings(0, 8)
      .send({ kind: 'link', link: { kind: 'lost', sinceUs: 8e6, cause: 'unplugged' }, atUs: 8.5e6 }),
  waiting: () => new ScriptedTrial().readings(0, 9),
  heating: () => new ScriptedTrial().standing(SOME_RUNS, 0).readings(0, 10).close().readings(10, 48),
  stale: () => new ScriptedTrial().readings(0, 10).close().readings(10, 40).tick(52),
  fault: () =>
    new ScriptedTrial().readings(0, 10).close().readings(10, 40).readings(40, 42, { faulted: true }),
  hold: () => {
    const trial = new ScriptedTrial().standing(SOME_RUNS, 0).readings(0, 10).close().readings(10, 67).cross();
    return trial.readings(67, 101, { holdFromS: trial.closedS + CROSSING_S });
  },
  dipped: () => {
    const trial = new ScriptedTrial().readings(0, 10).close().readings(10, 67).cross();
    trial.readings(67, 90, { holdFromS: trial.closedS + CROSSING_S });
    return trial
      .report(90, { phase: 'dipped', holdCountedS: 0 }, [{ kind: 'dip', fromS: 88 }])
      .readings(90, 91);
  },
  'after a dip': () => {
    const trial = scripted('dipped').report(91, { phase: 'crossed', holdDips: 1 });
    return trial.readings(91, 131, { holdFromS: 91 });
  },
  'hold done after a dip': () => {
    const trial = scripted('after a dip').readings(131, 211, { holdFromS: 91 });
    trial.report(211, { phase: 'hold-done', holdCountedS: 120 }, [{ kind: 'hold-done', timeS: 211 }]);
    return trial.readings(211, 214);
  },
  'closed again': () => scripted('heating').key('c', 48.2),
  'pedal again in the hold': () =>
    scripted('hold').report(101.1, {}, [{ kind: 'contact-again', timeS: 101 }]),
  'hold not verified': () => {
    const trial = new ScriptedTrial().readings(0, 10).close().readings(10, 67).cross();
    return trial.readings(67, 90, { holdFromS: trial.closedS + CROSSING_S }).tick(96);
  },
  'hold done': () => {
    const trial = new ScriptedTrial().standing(SOME_RUNS, 0).readings(0, 10).close().readings(10, 67).cross();
    trial.readings(67, 187, { holdFromS: trial.closedS + CROSSING_S });
    trial.report(187, { phase: 'hold-done', holdCountedS: 120 }, [{ kind: 'hold-done', timeS: 186.7 }]);
    return trial.readings(187, 195);
  },
  opened: () => {
    const trial = scripted('hold done');
    return trial.report(195, { phase: 'opened' }, [{ kind: 'opened', timeS: 195 }]).readings(195, 200);
  },
  'run good': () => {
    const trial = scripted('opened');
    trial.session = { ...trial.session, run: WAITING };
    const result = trialRun({ soakTimeS: 53.6 });
    trial.report(205, {}, [{ kind: 'run-finished', result: result.result }]);
    return trial.standing([...SOME_RUNS, result], 205).readings(205, 230);
  },
  'run suspect': () => {
    const trial = scripted('opened');
    trial.session = { ...trial.session, run: WAITING };
    trial.report(205, {}, [{ kind: 'run-finished', result: (SOME_RUNS[2] as TrialRun).result }]);
    return trial.standing(SOME_RUNS.slice(0, 3), 205).readings(205, 230);
  },
  'spoilt question': () =>
    scripted('heating')
      .key('x', 49)
      .key('s', 49.2)
      .key('l', 49.4)
      .key('i', 49.6)
      .key('p', 49.8)
      .readings(50, 51),
  'accept recipe': () => scripted('run good').key('a', 230.2),
  'runs chosen': () => scripted('run good').key('r', 230.2).named('up', 230.4).named('up', 230.6),
};

/** Pages beside the run itself, by name. */
export const PAGE_SCRIPTS = pageScripts((name) => scripted(name));

/** Every state that the screen must show, by name. */
export const SCRIPTS: Readonly<Record<string, () => ScriptedTrial>> = { ...RUN_SCRIPTS, ...PAGE_SCRIPTS };

const made = new Map<string, ScriptedTrial>();

/** A trial in the named state; made once, then copied, since a minute of readings takes a while. */
export function scripted(name: string): ScriptedTrial {
  const script = SCRIPTS[name];
  if (script === undefined) throw new Error(`no scripted state "${name}"`);
  const first = made.get(name) ?? script();
  made.set(name, first);
  return first.copy();
}
