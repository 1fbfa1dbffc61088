import { gaugeFor } from '../../../src/core/ready-check/gauge-for.ts';
import { trialOutcome } from '../../../src/core/result/trial-outcome.ts';
import { trialStatistics } from '../../../src/core/trial/trial-statistics.ts';
import { DEMO_ASSEMBLY, DEMO_PRESS } from '../../../src/program/commands/demo-shop.ts';
import { ScriptedTrial, SETUP, SOME_RUNS, trialRun } from './ScriptedTrial.ts';

const OUTCOME_SETTINGS = {
  rule: 'mean',
  targetC: SETUP.rules.targetC,
  holdS: 120,
  marginS: 0,
  timerStepS: 1,
  timerOffsetS: 0,
  timerStartsAt: 'closing',
} as const;

/** The runs of the trial as they stand, with the whole outcome. */
export function withOutcome(trial: ScriptedTrial, atS: number, runs = SOME_RUNS): ScriptedTrial {
  return trial.send({
    kind: 'standing',
    standing: {
      runs,
      statistics: trialStatistics(runs),
      outcome: trialOutcome(runs, OUTCOME_SETTINGS),
    },
    atUs: atS * 1e6,
  });
}

/** A trial whose press a person works: the demo shop's sizes, the ready check open. */
export function atReadyCheck(): ScriptedTrial {
  const gauge = gaugeFor(DEMO_PRESS, DEMO_ASSEMBLY);
  const trial = new ScriptedTrial({ readyCheck: true, gauge, initials: 'MK' });
  // Everything is at rest until long after.
  trial.closedS = 1000;
  return trial;
}

/** A finished run whose part cools from 160 °C with a time constant of 200 s. */
function cooling(trial: ScriptedTrial): ScriptedTrial {
  for (let i = 0; i < 400; i++) {
    const timeS = 232 + i / 10;
    const temperatureC = 24 + 136 * Math.exp(-(timeS - 232) / 200);
    const platens = [232.1, 230.4].map((c) => ({ kind: 'temperature' as const, temperatureC: c }));
    const bond = { kind: 'temperature' as const, temperatureC };
    trial.session = {
      ...trial.session,
      latestReading: { timeS, arrivedUs: timeS * 1e6, values: [bond, bond, ...platens] },
    };
    trial.report(timeS, { latestTimeS: timeS });
  }
  return trial;
}

/** Pages beside the run itself, by name; `scripted` gives the state of a run that they start from. */
export const pageScripts = (
  scripted: (name: string) => ScriptedTrial,
): Readonly<Record<string, () => ScriptedTrial>> => ({
  'ready check': () => atReadyCheck().readings(0, 15),
  'ready check, probe open': () => atReadyCheck().readings(0, 15, { faulted: true }),
  'ready check, reason asked': () =>
    atReadyCheck().readings(0, 5, { faulted: true }).key('w', 5.2).key('s', 5.4).key('p', 5.6),
  'ready check done': () =>
    atReadyCheck()
      .readings(0, 14)
      .named('enter', 14)
      .readings(14, 14.6)
      .named('enter', 14.6)
      .readings(14.6, 15.3)
      .named('enter', 15.3)
      .readings(15.3, 16),
  'cooling between runs': () => cooling(scripted('run good')),
  result: () => withOutcome(scripted('run good'), 230).key('d', 230.2),
  'result of one run': () => withOutcome(scripted('run good'), 230, [trialRun()]).key('d', 230.2),
  budget: () => withOutcome(scripted('run good'), 230).key('d', 230.2).key('e', 230.4),
  overlay: () => scripted('run good').key('v', 230.2),
  help: () => scripted('heating').key('h', 48.2),
  'recipe note': () => scripted('accept recipe').named('enter', 230.5).key('m', 230.7).named('enter', 231),
});
