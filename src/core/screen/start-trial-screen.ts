import { startBuckets } from '../chart/start-buckets.ts';
import { EMPTY_INPUT } from './ScreenInput.ts';
import type { Dialog, ReadyAnswers, TrialScreenSetup, TrialScreenState } from './TrialScreenState.ts';

export const SCREEN_BUCKET_S = 0.25;
export const SCREEN_BUCKETS = 1200;

export const NOTHING_ANSWERED: ReadyAnswers = { confirmed: [], overridden: {}, done: false };

/** What a person sees first once the cautions are read: the ready check where there is one. */
export function firstDialog({ readyCheck = false }: TrialScreenSetup): Dialog | null {
  return readyCheck ? { kind: 'ready', selected: null } : null;
}

/** The trial screen before anything has come. `nowUs`: host monotonic clock. */
export function startTrialScreen(setup: TrialScreenSetup, nowUs: number): TrialScreenState {
  return Object.freeze({
    setup,
    unit: setup.unit,
    nowUs,
    link: { kind: 'opening' as const },
    store: null,
    session: null,
    latest: null,
    latestUs: null,
    shown: null,
    shownUs: Number.NEGATIVE_INFINITY,
    intervalS: null,
    trace: startBuckets(SCREEN_BUCKET_S, SCREEN_BUCKETS),
    marks: [],
    recent: [],
    cooling: null,
    ready: NOTHING_ANSWERED,
    reasonsGiven: {},
    gaugePsi: null,
    finished: [],
    band: [],
    estimate: null,
    runNumber: null,
    crossedS: null,
    holdDone: false,
    holdUnseen: false,
    lastResult: null,
    standing: { runs: [], statistics: null },
    runsBack: 0,
    dialog: setup.cautionsAcknowledged ? firstDialog(setup) : { kind: 'cautions' as const },
    input: EMPTY_INPUT,
    markKeyUs: {},
    marksTaken: [],
    closedMarksUs: [],
    takenBack: null,
    spoiltReason: null,
    notPassed: null,
    notice: null,
    flashUntilUs: 0,
    pace: setup.replay === true ? { speed: setup.speed ?? 1, paused: false } : null,
    replayOver: false,
  });
}
