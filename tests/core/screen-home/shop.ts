import type { BondingCycle } from '../../../src/core/bonding/BondingCycle.ts';
import { rowText } from '../../../src/core/chart/row-text.ts';
import type { Recipe } from '../../../src/core/recipe/Recipe.ts';
import { CHANNEL_ROLES } from '../../../src/core/recording/RecordingEntry.ts';
import { trialOutcome } from '../../../src/core/result/trial-outcome.ts';
import type { RunResult } from '../../../src/core/run/RunResult.ts';
import type { NamedKey } from '../../../src/core/screen/ScreenInput.ts';
import type { HomeEvent, HomeIntent } from '../../../src/core/screen-home/HomeEvent.ts';
import {
  EMPTY_PLAN,
  type HomeFacts,
  type TrialFacts,
  type TrialPlan,
} from '../../../src/core/screen-home/HomeFacts.ts';
import type { HomeState } from '../../../src/core/screen-home/HomeState.ts';
import { homeReducer } from '../../../src/core/screen-home/home-reducer.ts';
import { homeView } from '../../../src/core/screen-home/home-view.ts';
import { startHome } from '../../../src/core/screen-home/start-home.ts';
import type { LoadedCycle, LoadedTrial, RunTrace } from '../../../src/core/screen-records/RecordsState.ts';
import { shellFrame } from '../../../src/core/screen-shell/shell-frame.ts';
import type { TrialRun } from '../../../src/core/trial/TrialResult.ts';
import { trialStatistics } from '../../../src/core/trial/trial-statistics.ts';

/** The invented shop of the demo scenario: press North, assembly WB-212. */
export const NORTH = Object.freeze({
  name: 'North',
  ramBoreMm: 200,
  ramRodMm: null,
  rams: 1,
  gaugeDivisionPsi: 2,
  platenSetPointC: { upper: 232.2222, lower: 232.2222 },
  timerStartsAt: 'closing' as const,
  timerOffsetS: 0,
  timerStepS: 1,
});

export const WB_212 = Object.freeze({
  name: 'WB-212',
  ringOuterDiameterMm: 212,
  ringInnerDiameterMm: 168,
  carrier: 'brake plate, steel',
  targetC: (350 - 32) / 1.8,
  holdS: 120,
  adhesive: null,
  dataSheetRevision: null,
  highestDwellS: null,
  highestPeakC: null,
  leastRecoveryS: null,
});

export const EMPTY_SHOP: HomeFacts = Object.freeze({
  presses: [],
  assemblies: [],
  recipes: [],
  trials: [],
  trialCount: 0,
  ports: [],
  rolesByPress: {},
  storePath: '/data/store.db',
  freeBytes: 84e9,
  entries: [],
});

export const trialFacts = (change: Partial<TrialFacts> = {}): TrialFacts => ({
  trialId: '20261125-1108-aaaa',
  assemblyName: 'WB-212',
  pressName: 'North',
  startedAt: '2026-11-25T11:08:00Z',
  closedAt: '2026-11-25T11:40:00Z',
  simulated: false,
  recordingIds: ['r1'],
  when: '25 Nov 2026 11:08',
  runs: 3,
  countingRuns: 3,
  meanSoakS: 53.2,
  hasRecipe: true,
  ...change,
});

/** A recipe of two versions' history: the second rests on three runs. */
export const RECIPE: Recipe = Object.freeze({
  assemblyName: 'WB-212',
  pressName: 'North',
  version: 2,
  acceptedAt: '2026-11-25T11:40:00Z',
  initials: 'AB',
  note: 'first article',
  provisional: false,
  platenSetPointC: { upper: 232.2222, lower: 232.2222 },
  platenMeasuredC: { upper: 232, lower: 231 },
  gaugePsi: 94,
  targetC: (350 - 32) / 1.8,
  rule: 'next-run',
  ruleReason: null,
  soakS: 54.5,
  holdS: 120,
  marginS: 0,
  dwellS: 175,
  dip: 'restarts',
  statistics: trialStatistics([]),
  restsOn: [1, 2, 3].map((runNumber) => ({ recordingId: 'r1', runNumber })),
  adhesive: null,
  dataSheetRevision: null,
  highestDwellS: null,
  highestPeakC: null,
  leastRecoveryS: null,
  runRuleVersion: 1,
  simulated: true,
});

export const SHOP: HomeFacts = Object.freeze({
  ...EMPTY_SHOP,
  presses: [NORTH],
  assemblies: [WB_212],
  trials: [trialFacts()],
  trialCount: 1,
  ports: [{ path: '/dev/ttyACM0', maker: null }],
});

export const PLAN: TrialPlan = Object.freeze({
  ...EMPTY_PLAN,
  pressName: 'North',
  assemblyName: 'WB-212',
  reader: '/dev/ttyACM0',
});

/** The screens around the trial, driven by keys as a person gives them: single keys 200 ms apart, scans 5 ms apart. */
export class DrivenHome {
  state: HomeState;
  intents: HomeIntent[] = [];
  private atUs = 1_000_000;

  constructor(facts: HomeFacts = SHOP, plan: TrialPlan = PLAN) {
    this.state = startHome(facts, plan, 'F', this.atUs);
  }

  send(
    event: HomeEvent extends infer One ? (One extends HomeEvent ? Omit<One, 'atUs'> : never) : never,
  ): this {
    const [next, intents] = homeReducer(this.state, { ...event, atUs: this.atUs } as HomeEvent);
    this.state = next;
    this.intents.push(...intents);
    return this;
  }

  /** Single keys: names of keys, or characters. */
  keys(...names: readonly string[]): this {
    for (const name of names) {
      this.atUs += 200_000;
      this.raw(name);
      this.atUs += 100_000;
      this.send({ kind: 'tick' });
    }
    return this;
  }

  /** A scanner: characters 5 ms apart, then Enter. */
  scan(text: string): this {
    this.atUs += 200_000;
    for (const character of text) {
      this.raw(character);
      this.atUs += 5000;
    }
    this.raw('enter');
    return this;
  }

  /** Text typed one character at a time, then Enter. */
  type(text: string): this {
    return this.keys(...text, 'enter');
  }

  waited(seconds: number): this {
    this.atUs += seconds * 1e6;
    return this.send({ kind: 'tick' });
  }

  rows(columns = 80, rows = 24, ascii = false) {
    return shellFrame(homeView(this.state), { columns, rows, ascii });
  }

  text(columns = 80, rows = 24, ascii = false): string {
    return this.rows(columns, rows, ascii).map(rowText).join('\n');
  }

  private raw(name: string): void {
    const input =
      name.length === 1
        ? ({ kind: 'character', character: name, atUs: this.atUs } as const)
        : ({ kind: 'named', name: name as NamedKey, atUs: this.atUs } as const);
    this.send({ kind: 'input', input });
  }
}

export function runResult(change: Partial<RunResult> = {}): RunResult {
  return {
    ruleVersion: 1,
    runNumber: 1,
    pressClosed: { timeS: 12, standardUncertaintyS: 0.01, by: 'contact', all: [], disagreementS: null },
    onset: null,
    provisionalCrossing: null,
    crossing: { timeS: 65.5, standardUncertaintyS: 0.05, slopeCPerS: 1.37 },
    crossings: [],
    soakTimeS: 53.5,
    soakTimeStandardUncertaintyS: 0.05,
    openedS: 186,
    endedS: 190,
    startC: 24,
    peakC: 215,
    lowestAfterCrossingC: 176,
    hold: null,
    platenAtClosingC: { upper: 232, lower: 231 },
    conditions: { ring: 'fresh', coating: 'coated', carrierId: null, probe: 're-laid' },
    notes: [],
    verdict: 'good',
    reasons: [],
    ...change,
  };
}

const run = (number: number, change: Partial<RunResult> = {}): TrialRun => ({
  source: 'r1',
  result: runResult({ runNumber: number, ...change }),
  decision: { kind: 'automatic' },
});

/** Three good runs and a suspect one. */
export function loadedTrial(): LoadedTrial {
  const runs = [
    run(1),
    run(2, { soakTimeS: 53.1 }),
    run(3, { soakTimeS: 52.8 }),
    run(4, {
      soakTimeS: 48.2,
      startC: 62,
      verdict: 'suspect',
      reasons: [
        { code: 'carrier-warm', severity: 'suspect', facts: { startC: 62, limitC: 15, ambientC: 24 } },
      ],
    }),
  ];
  const settings = {
    rule: 'mean' as const,
    targetC: WB_212.targetC,
    holdS: 120,
    marginS: 0,
    timerStepS: 1,
    timerOffsetS: 0,
    timerStartsAt: 'closing' as const,
  };
  return {
    trialId: trialFacts().trialId,
    outcome: trialOutcome(runs, settings),
    figures: ['3 runs count.', 'common mean rule: 174 s'],
    strictestRule: 'next-run',
  };
}

/**
 * A run of the first-order curve of the domain brief: 24 °C, platens 232 °C, time constant 40.5 s. It reaches 350 °F after
 * 40.5 s · ln((232 − 24) / (232 − 176.667)) = 53.6 s.
 */
export function firstOrderTrace(index: number): RunTrace {
  const readings = Array.from({ length: 2001 }, (_, i) => {
    const timeS = -20 + i / 10;
    const t = timeS <= 0 ? 24 : 232 - (232 - 24) * Math.exp(-timeS / 40.5);
    return {
      timeS,
      values: [
        { kind: 'temperature' as const, temperatureC: t },
        { kind: 'temperature' as const, temperatureC: 232 },
      ],
    };
  });
  return {
    run: index,
    roles: [CHANNEL_ROLES[0], 'upper-platen'],
    closedKnown: true,
    targetC: WB_212.targetC,
    crossingS: 53.63,
    openedS: 174,
    readings,
  };
}

/** Three closings, the newest first: opened early without a reader; done with a probe; the other assembly on the other press. */
export function loadedCycles(): readonly LoadedCycle[] {
  const done: BondingCycle = {
    cycleId: 'c2',
    assemblyName: 'WB-212',
    pressName: 'North',
    recipeVersion: 2,
    recordingId: 'r7',
    simulated: false,
    initials: 'AB',
    closedAt: '2026-11-25T13:10:00.000Z',
    closedBy: 'contact',
    dwellWantedS: 175,
    dwellHeldS: 176.2,
    targetC: WB_212.targetC,
    holdWantedS: 120,
    holdCountedS: 121.5,
    hold: 'verified',
    platensAtClosingC: { upper: 232.1, lower: 231.4 },
    lowestC: 176.9,
    peakC: 221.3,
    againstBand: 'inside',
    recordedAtS: 41.2,
    result: 'done',
    flags: [],
  };
  const early: BondingCycle = {
    ...done,
    cycleId: 'c3',
    recordingId: null,
    recordedAtS: null,
    closedBy: 'key',
    dwellHeldS: 100,
    holdCountedS: null,
    hold: 'not-measured',
    platensAtClosingC: { upper: null, lower: null },
    lowestC: null,
    peakC: null,
    againstBand: 'not-compared',
    result: 'opened-early',
    flags: ['opened-early', 'closed-too-soon'],
  };
  const other: BondingCycle = { ...done, cycleId: 'c1', assemblyName: 'WB-150', pressName: 'South' };
  return [
    { cycle: early, when: '25 Nov 13:20' },
    { cycle: done, when: '25 Nov 13:10' },
    { cycle: other, when: '24 Nov 09:02' },
  ];
}

/** The first-order curve as a cycle's trace, its recipe's runs 3 °C to both sides. */
export function cycleTrace(): RunTrace {
  const trace = firstOrderTrace(0);
  const band = trace.readings.flatMap(({ timeS, values: [value] }) =>
    value?.kind === 'temperature' && timeS >= 0
      ? [{ timeS, lowC: value.temperatureC - 3, highC: value.temperatureC + 3 }]
      : [],
  );
  return { ...trace, crossingS: null, band };
}

/** Every page, by name, as a person comes to it. */
export const PAGES: Readonly<Record<string, () => DrivenHome>> = {
  'home, empty store': () => new DrivenHome(EMPTY_SHOP, EMPTY_PLAN),
  home: () => new DrivenHome(),
  'home, open trial': () =>
    new DrivenHome({ ...SHOP, trials: [trialFacts({ closedAt: null, simulated: true })] }),
  'home, reader gone': () => new DrivenHome({ ...SHOP, ports: [] }),
  'home, quitting': () => new DrivenHome().keys('q'),
  'question for text': () => new DrivenHome(EMPTY_SHOP, EMPTY_PLAN).keys('enter', 'N'),
  'question, refused': () => new DrivenHome(EMPTY_SHOP, EMPTY_PLAN).keys('enter').type('North').type('200'),
  'question with choices': () => new DrivenHome().keys('s', 'r'),
  'channels one by one': () => new DrivenHome().keys('s', 'r', '1', '1', 'e'),
  'set-up': () => new DrivenHome().keys('s'),
  presses: () => new DrivenHome().keys('s', 'p'),
  assemblies: () => new DrivenHome().keys('s', 'a'),
  'start of a trial': () => new DrivenHome().keys('t'),
  'start, nothing known': () => new DrivenHome(EMPTY_SHOP, EMPTY_PLAN).keys('t'),
  pressure: () => new DrivenHome().keys('p'),
  trials: () => new DrivenHome().keys('r'),
  'trials, none': () => new DrivenHome(EMPTY_SHOP, EMPTY_PLAN).keys('r'),
  recipes: () =>
    new DrivenHome({ ...SHOP, recipes: [RECIPE, { ...RECIPE, version: 1, provisional: true }] }).keys(
      'r',
      'r',
    ),
  'recipes, none': () => new DrivenHome().keys('r', 'r'),
  trial: () => new DrivenHome().keys('r', 'enter').send({ kind: 'trial-loaded', trial: loadedTrial() }),
  'trial, setting aside': () => PAGES.trial!().keys('x', 'w'),
  'trial, replay': () => PAGES.trial!().keys('p'),
  chart: () =>
    PAGES.trial!()
      .keys('enter')
      .send({ kind: 'traces-loaded', traces: [firstOrderTrace(0)] }),
  overlay: () =>
    PAGES.trial!()
      .keys('a')
      .send({ kind: 'traces-loaded', traces: [0, 1, 2, 3].map(firstOrderTrace) }),
  'chart without readings': () => PAGES.trial!().keys('enter').send({ kind: 'traces-loaded', traces: [] }),
  cycles: () => new DrivenHome().keys('r', 'c').send({ kind: 'cycles-loaded', cycles: loadedCycles() }),
  'cycles, none': () => new DrivenHome().keys('r', 'c').send({ kind: 'cycles-loaded', cycles: [] }),
  cycle: () => PAGES.cycles!().keys('down', 'enter'),
  'cycle, without a reader': () => PAGES.cycles!().keys('enter'),
  'chart of a cycle': () =>
    PAGES.cycle!()
      .keys('enter')
      .send({ kind: 'traces-loaded', traces: [cycleTrace()] }),
  'help of the cycles': () => PAGES.cycles!().keys('h'),
  'help of a cycle': () => PAGES.cycle!().keys('h'),
  'help of a cycle’s chart': () => PAGES['chart of a cycle']!().keys('h'),
  'help of the home': () => new DrivenHome().keys('h'),
  'help of a question': () => PAGES['question for text']!().keys('tab'),
  'help of a trial': () => PAGES.trial!().keys('h'),
  'help of a chart': () => PAGES.chart!().keys('h'),
};
