import { startBuckets } from '../chart/start-buckets.ts';
import { EMPTY_INPUT } from './ScreenInput.ts';
import type { TrialScreenSetup, TrialScreenState } from './TrialScreenState.ts';

export const SCREEN_BUCKET_S = 0.25;
export const SCREEN_BUCKETS = 1200;

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
    band: [],
    estimate: null,
    runNumber: null,
    crossedS: null,
    dipped: false,
    holdDone: false,
    holdUnseen: false,
    lastResult: null,
    standing: { runs: [], statistics: null },
    dialog: setup.cautionsAcknowledged ? null : { kind: 'cautions' as const },
    input: EMPTY_INPUT,
    markKeyUs: {},
    latestMark: null,
    notice: null,
    flashUntilUs: 0,
    replayOver: false,
  });
}
