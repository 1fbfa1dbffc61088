import { startBuckets } from '../chart/start-buckets.ts';
import { EMPTY_INPUT } from '../screen/ScreenInput.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import type { ReadyState } from '../warm-up/ReadyWatch.ts';
import type { WarmUpScreenState, WarmUpSetup } from './WarmUpScreen.ts';

/** A quarter of an hour in seconds; doubled as the warm-up grows longer. */
const BUCKET_S = 1;
const BUCKETS = 900;

export interface StartWarmUpScreen extends WarmUpSetup {
  readonly unit: TemperatureUnit;
  readonly ready: ReadyState;
  readonly nowUs: number;
  readonly cautionsAcknowledged: boolean;
}

/** The live warm-up before the reader is open. */
export function startWarmUpScreen(start: StartWarmUpScreen): WarmUpScreenState {
  const none = start.channels.map(() => null);
  return {
    ...start,
    shown: start.ready,
    shownUs: Number.NEGATIVE_INFINITY,
    faults: none,
    trace: startBuckets(BUCKET_S, BUCKETS),
    intervalS: null,
    latestUs: null,
    openedUs: null,
    counts: { lines: 0, readings: 0, lost: 0, gaps: 0 },
    lowestC: none,
    wasInside: false,
    heaters: null,
    markedUs: null,
    link: { kind: 'opening' },
    store: null,
    rung: false,
    help: false,
    asking: null,
    notice: null,
    input: EMPTY_INPUT,
  };
}
