import type { Reading, ReadingValue } from '../../../src/core/reading/StreamEvent.ts';
import type { RunEvent, RunState } from '../../../src/core/run/RunEvent.ts';
import type { RunResult, RunRules } from '../../../src/core/run/RunResult.ts';
import { startTrialScreen } from '../../../src/core/screen/start-trial-screen.ts';
import type { TrialIntent } from '../../../src/core/screen/TrialIntent.ts';
import type { TrialScreenEvent } from '../../../src/core/screen/TrialScreenEvent.ts';
import type { TrialScreenSetup, TrialScreenState } from '../../../src/core/screen/TrialScreenState.ts';
import { trialScreenReducer } from '../../../src/core/screen/trial-screen-reducer.ts';
import type { SessionState } from '../../../src/core/session/Session.ts';
import type { TrialRun } from '../../../src/core/trial/TrialResult.ts';
import { trialStatistics } from '../../../src/core/trial/trial-statistics.ts';

/** The invented demo job: brake plate WB-212 on press North, 350 °F, hold 120 s, platens 450 °F. */
export const RULES: RunRules = {
  targetC: 176.667,
  holdS: 120,
  longestDipS: 2,
  dip: 'restarts',
  platenSetPointC: { upper: 232.2, lower: 232.2 },
  ambientC: 24,
  warmCarrierLimitC: 8,
  closingDisagreementLimitS: 1,
  closedAtS: null,
};

export const SETUP: TrialScreenSetup = {
  assemblyName: 'WB-212',
  pressName: 'North',
  roles: ['bond-line', 'bond-line-outer', 'upper-platen', 'lower-platen'],
  rules: RULES,
  simulated: true,
  readerName: 'simulated reader',
  storePath: 'dwellwright.db',
  unit: 'F',
  marginS: 0,
  timerStepS: 1,
  timerOffsetS: 0,
  cautionsAcknowledged: true,
};

const COUNTS = {
  lines: 0,
  readings: 0,
  garbage: 0,
  badChecksum: 0,
  malformed: 0,
  overLong: 0,
  cutOff: 0,
  startUnknown: 0,
  duplicates: 0,
  lostSamples: 0,
  gaps: 0,
  restarts: 0,
  unplugs: 0,
};

export const WAITING: RunState = {
  phase: 'waiting',
  runNumber: 0,
  pressClosed: null,
  onset: null,
  provisionalCrossing: null,
  finalCrossing: null,
  holdCountedS: 0,
  spoilt: false,
  warnings: [],
  latestTimeS: null,
};

export function sessionState(over: Partial<SessionState> = {}): SessionState {
  return {
    run: WAITING,
    results: [],
    latestReading: null,
    counts: COUNTS,
    clock: { driftPpm: null, standardUncertaintyPpm: null, overS: 0 },
    identity: null,
    recognised: null,
    refusal: null,
    ...over,
  };
}

/** First-order heating of the brief: 24 °C between platens of 232 °C, time constant 40.5 s, delay 3 s. */
export function bondLineC(sinceClosedS: number, startC = 24): number {
  return sinceClosedS < 3 ? startC : 232 - (232 - startC) * Math.exp(-(sinceClosedS - 3) / 40.5);
}

/** Seconds after press closed at which that curve reaches the target (closed form). */
export const CROSSING_S = 3 + 40.5 * Math.log((232 - 24) / (232 - RULES.targetC));

const at = (temperatureC: number): ReadingValue => ({ kind: 'temperature', temperatureC });

export function readingAt(timeS: number, closedS: number, faulted = false): Reading {
  const since = timeS - closedS;
  const ripple = 0.15 * Math.sin(timeS * 7.3);
  return {
    timeS,
    arrivedUs: Math.round(timeS * 1e6),
    values: [
      faulted ? { kind: 'fault', fault: 'open-circuit' } : at(bondLineC(since) + ripple),
      at(bondLineC(since - 0.8) + ripple),
      at(232.1 - (since > 0 ? 9 * (since / 8) * Math.exp(1 - since / 8) : 0) + ripple),
      at(230.4 - (since > 0 ? 12 * (since / 9) * Math.exp(1 - since / 9) : 0)),
    ],
  };
}

export const RUN: RunResult = {
  ruleVersion: 1,
  runNumber: 1,
  pressClosed: { timeS: 10, standardUncertaintyS: 0.1, by: 'key', all: [], disagreementS: null },
  onset: null,
  provisionalCrossing: null,
  crossing: { timeS: 63.4, standardUncertaintyS: 0.05, slopeCPerS: 1.37 },
  crossings: [],
  soakTimeS: 53.4,
  soakTimeStandardUncertaintyS: 0.12,
  openedS: 190,
  endedS: 200,
  startC: 24,
  peakC: 228,
  lowestAfterCrossingC: 177,
  hold: {
    wantedS: 120,
    countedS: 126.6,
    longestUnbrokenS: 126.6,
    totalAboveS: 126.6,
    verified: true,
    dips: [],
  },
  platenAtClosingC: { upper: 232, lower: 230 },
  conditions: { ring: 'fresh', coating: 'coated', carrierId: null, probe: 're-laid' },
  notes: [],
  verdict: 'good',
  reasons: [],
};

export function trialRun(
  over: Partial<RunResult> = {},
  decision: TrialRun['decision'] = { kind: 'automatic' },
): TrialRun {
  return { source: 'demo', result: { ...RUN, ...over }, decision };
}

export const SOME_RUNS: readonly TrialRun[] = [
  trialRun({ soakTimeS: 53.4 }),
  trialRun({ soakTimeS: 53.9, startC: 25 }),
  trialRun({
    soakTimeS: 41.2,
    startC: 61,
    verdict: 'suspect',
    reasons: [{ code: 'carrier-warm', severity: 'suspect', facts: { startC: 61, limitC: 32, ambientC: 24 } }],
  }),
  trialRun({ soakTimeS: 53.1 }),
];

/** Feeds events to the reducer, keeping every wish. */
export class ScriptedTrial {
  state: TrialScreenState;
  readonly intents: TrialIntent[] = [];
  closedS = 10;
  session = sessionState();

  setup: Partial<TrialScreenSetup>;

  constructor(setup: Partial<TrialScreenSetup> = {}) {
    this.setup = setup;
    this.state = startTrialScreen({ ...SETUP, ...setup }, 0);
    this.send({ kind: 'link', link: { kind: 'open' }, atUs: 0 });
    this.send({ kind: 'store', store: { p99Ms: 12, freeBytes: 82e9, trouble: null }, atUs: 0 });
  }

  copy(): ScriptedTrial {
    const copy = new ScriptedTrial();
    copy.setup = this.setup;
    copy.state = this.state;
    copy.session = this.session;
    copy.closedS = this.closedS;
    copy.intents.splice(0, copy.intents.length, ...this.intents);
    return copy;
  }

  send(event: TrialScreenEvent): this {
    const [next, intents] = trialScreenReducer(this.state, event);
    this.state = next;
    this.intents.push(...intents);
    return this;
  }

  /** A key pressed and let stand alone. */
  key(character: string, atS: number): this {
    this.send({ kind: 'input', input: { kind: 'character', character, atUs: atS * 1e6 }, atUs: atS * 1e6 });
    return this.tick(atS + 0.06);
  }

  named(name: 'enter' | 'escape' | 'up' | 'down' | 'backspace', atS: number): this {
    return this.send({ kind: 'input', input: { kind: 'named', name, atUs: atS * 1e6 }, atUs: atS * 1e6 });
  }

  tick(atS: number): this {
    return this.send({ kind: 'tick', atUs: Math.round(atS * 1e6) });
  }

  report(atS: number, run: Partial<RunState>, events: readonly RunEvent[] = []): this {
    this.session = { ...this.session, run: { ...this.session.run, ...run } };
    return this.send({ kind: 'session', state: this.session, events, atUs: Math.round(atS * 1e6) });
  }

  /** Ten readings a second from one time to another. */
  readings(fromS: number, toS: number, options: { faulted?: boolean; holdFromS?: number } = {}): this {
    for (let i = Math.round(fromS * 10); i < Math.round(toS * 10); i++) {
      const timeS = i / 10;
      const reading = readingAt(timeS, this.closedS, options.faulted);
      const held = options.holdFromS === undefined ? {} : { holdCountedS: timeS - options.holdFromS };
      this.session = {
        ...this.session,
        latestReading: reading,
        run: { ...this.session.run, ...held, latestTimeS: timeS },
      };
      this.send({ kind: 'session', state: this.session, events: [], atUs: Math.round(timeS * 1e6) });
    }
    return this;
  }

  standing(runs: readonly TrialRun[], atS: number): this {
    return this.send({
      kind: 'standing',
      standing: { runs, statistics: trialStatistics(runs) },
      atUs: atS * 1e6,
    });
  }

  close(): this {
    const pressClosed = {
      timeS: this.closedS,
      standardUncertaintyS: 0.1,
      by: 'key' as const,
      all: [],
      disagreementS: null,
    };
    return this.report(this.closedS, { phase: 'heating', runNumber: 1, pressClosed }, [
      { kind: 'press-closed', pressClosed },
    ]);
  }

  cross(): this {
    const timeS = this.closedS + CROSSING_S;
    const crossing = { timeS, standardUncertaintyS: 0.05, slopeCPerS: 1.365 };
    return this.report(timeS + 0.3, { phase: 'crossed', provisionalCrossing: crossing }, [
      { kind: 'crossing-provisional', crossing, channel: 1 },
    ]);
  }
}
