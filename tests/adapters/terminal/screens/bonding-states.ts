import type { BondingEvent, BondingJob, BondingState } from '../../../../src/core/bonding/BondingState.ts';
import { bondingReducer } from '../../../../src/core/bonding/bonding-reducer.ts';
import { startBonding } from '../../../../src/core/bonding/start-bonding.ts';
import type { RunState } from '../../../../src/core/run/RunEvent.ts';
import { CROSSING_S, readingAt, SETUP, sessionState, WAITING } from '../../../core/screen/scripted-trial.ts';
import { RECIPE } from '../../../core/screen-home/shop.ts';

const JOB: BondingJob = {
  recipe: { ...RECIPE, simulated: false },
  gaugePsi: 94,
  platenSetPointC: { upper: 232.2, lower: 230.4 },
  platenBandC: 2.8,
  band: [0, 30, 60, 120, 200].map((timeS) => ({ timeS, lowC: 20 + timeS, highC: 30 + timeS })),
  bandToleranceC: 5,
  roles: SETUP.roles,
  readerName: '/dev/ttyACM0',
  simulated: false,
  speed: 1,
};
const NO_READER: BondingJob = {
  ...JOB,
  roles: null,
  readerName: null,
  platenSetPointC: null,
  gaugePsi: null,
};
const CLOSED_S = 10;

/** The production timer, fed by a script. */
class ScriptedBonding {
  state: BondingState;
  run: RunState = WAITING;

  constructor(job: BondingJob | null, acknowledged = true) {
    this.state = startBonding({
      choices: [RECIPE, { ...RECIPE, assemblyName: 'WB-150', simulated: false }],
      cautionsAcknowledged: acknowledged,
      unit: 'F',
      storePath: '/shop/store.db',
      nowUs: 0,
    });
    this.send({ kind: 'link', link: { kind: 'open' }, atUs: 0 });
    this.send({ kind: 'store', store: { p99Ms: 12, freeBytes: 82e9, trouble: null }, atUs: 0 });
    if (job !== null) this.send({ kind: 'prepared', job, atUs: 0 });
  }

  send(event: BondingEvent): this {
    [this.state] = bondingReducer(this.state, event);
    return this;
  }

  key(character: string, atS: number): this {
    const atUs = atS * 1e6;
    return this.send({ kind: 'input', input: { kind: 'character', character, atUs }, atUs }).tick(atS + 0.1);
  }

  tick(atS: number): this {
    return this.send({ kind: 'tick', atUs: atS * 1e6 });
  }

  /** Two readings a second. */
  readings(fromS: number, toS: number, run: Partial<RunState> = {}, faulted = false): this {
    for (let timeS = fromS; timeS < toS; timeS += 0.5) {
      this.run = { ...this.run, ...run, latestTimeS: timeS };
      this.send({
        kind: 'session',
        state: sessionState({ run: this.run, latestReading: readingAt(timeS, CLOSED_S, faulted) }),
        events: [],
        atUs: timeS * 1e6,
      });
    }
    return this;
  }

  hold(): this {
    const crossing = { timeS: CLOSED_S + CROSSING_S, standardUncertaintyS: 0.05, slopeCPerS: 1.37 };
    return this.readings(67, 110, { phase: 'crossed', provisionalCrossing: crossing, holdCountedS: 43 });
  }
}

const dwelling = (): ScriptedBonding =>
  new ScriptedBonding(JOB).readings(0, 10).key('c', CLOSED_S).readings(10.5, 67, { phase: 'heating' });

/** The production timer in each of its states. */
export const BONDING_STATES: Readonly<Record<string, () => BondingState>> = {
  cautions: () => new ScriptedBonding(null, false).state,
  'choosing a recipe': () => new ScriptedBonding(null).state,
  'no reader': () => new ScriptedBonding(NO_READER).state,
  'no reading yet': () => new ScriptedBonding(JOB).state,
  ready: () => new ScriptedBonding(JOB).readings(0, 10).state,
  'ready, simulated': () => new ScriptedBonding({ ...JOB, simulated: true }).readings(0, 10).state,
  'reader lost': () =>
    new ScriptedBonding(JOB)
      .readings(0, 10)
      .send({ kind: 'link', link: { kind: 'lost', sinceUs: 10e6, cause: 'unplugged' }, atUs: 11e6 }).state,
  dwell: () => dwelling().state,
  'dwell without a reader': () => new ScriptedBonding(NO_READER).key('c', 10).tick(60).state,
  'hold counts': () => dwelling().hold().state,
  stale: () => dwelling().hold().tick(125).state,
  fault: () => dwelling().hold().readings(110, 112, {}, true).state,
  'dwell done, verified': () =>
    dwelling().hold().readings(110, 190, { phase: 'hold-done', holdCountedS: 120 }).state,
  'dwell done, not verified': () => dwelling().hold().tick(150).readings(150, 190).state,
  'opened early': () => dwelling().key('o', 68).tick(70).state,
  'leaving asked': () => dwelling().key('q', 68).state,
  help: () => new ScriptedBonding(JOB).readings(0, 10).key('h', 11).state,
};
