import { addToBuckets } from '../chart/add-to-buckets.ts';
import { bucketPoints } from '../chart/bucket-points.ts';
import { startBuckets } from '../chart/start-buckets.ts';
import type { TraceBuckets } from '../chart/TraceBuckets.ts';
import type { Reading } from '../reading/StreamEvent.ts';
import type { EstimatePoint, TimeToTarget } from '../run-estimate/TimeToTarget.ts';
import { type ExpectedPlateau, timeToTarget } from '../run-estimate/time-to-target.ts';
import { bondLineChannels } from './bond-line-channels.ts';
import { coolingNow } from './cooling-now.ts';
import { speedOf } from './pace.ts';
import { READY_STRETCH_S } from './ready-items.ts';
import { SCREEN_BUCKET_S, SCREEN_BUCKETS } from './start-trial-screen.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

/** Digits change at most four times a second, µs. */
const SHOWN_US = 250_000;
const RECENT_STEP_S = 0.05;
/** Kept of the trace while no run is open, s. */
export const IDLE_STRETCH_S = 150;

/** A reading came: trace, figures and estimate follow, each at its own rate. */
export function reduceReading(state: TrialScreenState, reading: Reading, atUs: number): TrialScreenState {
  const stepS = state.latest === null ? null : reading.timeS - state.latest.timeS;
  const intervalS =
    stepS === null || stepS <= 0 || stepS > 3
      ? state.intervalS
      : state.intervalS === null
        ? stepS
        : state.intervalS + (stepS - state.intervalS) * 0.05;
  const runOpen = isRunOpen(state);
  const grown = addToBuckets(state.trace, reading.timeS, reading.values);
  const kept = runOpen || (state.setup.replay === true && state.lastResult !== null);
  const trace = kept ? grown : forgetOld(grown, reading.timeS);
  const recent = runOpen ? state.recent : withRecent(state.recent, reading);
  const next = { ...state, latest: reading, latestUs: atUs, intervalS, trace, recent };
  const speed = speedOf(state);
  if (atUs - state.shownUs < SHOWN_US * speed) return next;
  // Once a second; a press that runs faster than the clock has cooled too much by then.
  const cooling = runOpen
    ? null
    : speed === 1 && Math.floor(atUs / 1e6) === Math.floor(state.shownUs / 1e6)
      ? state.cooling
      : coolingNow(next);
  return { ...next, shown: reading, shownUs: atUs, estimate: estimateFor(next), cooling };
}

export function isRunOpen(state: TrialScreenState): boolean {
  const phase = state.session?.run.phase ?? 'waiting';
  return phase !== 'waiting';
}

/** The latest seconds for the ready check: at most twenty readings a second, in steps so that little is copied. */
function withRecent(recent: readonly Reading[], reading: Reading): readonly Reading[] {
  const before = recent.at(-1);
  if (before !== undefined && reading.timeS - before.timeS < RECENT_STEP_S && reading.timeS >= before.timeS)
    return recent;
  const kept = (recent[0]?.timeS ?? reading.timeS) < reading.timeS - 1.25 * READY_STRETCH_S;
  const old = reading.timeS - READY_STRETCH_S;
  return [
    ...(kept ? recent.filter((one) => one.timeS >= old && one.timeS <= reading.timeS) : recent),
    reading,
  ];
}

/** While waiting, only the latest stretch is kept, in the finest buckets. */
function forgetOld(trace: TraceBuckets, latestS: number): TraceBuckets {
  if (trace.bucketS > SCREEN_BUCKET_S * 4) return startBuckets(SCREEN_BUCKET_S, SCREEN_BUCKETS);
  const first = trace.closed[0];
  if (first === undefined || latestS - first.latestS <= IDLE_STRETCH_S + 30) return trace;
  return { ...trace, closed: trace.closed.filter((bucket) => latestS - bucket.latestS <= IDLE_STRETCH_S) };
}

function estimateFor(state: TrialScreenState): TimeToTarget | null {
  const run = state.session?.run;
  const fromS = run?.pressClosed?.timeS ?? run?.onset?.timeS;
  if (run?.phase !== 'heating' || fromS === undefined) return null;
  let slowest: TimeToTarget | null = null;
  for (const channel of bondLineChannels(state.setup.roles)) {
    const points: EstimatePoint[] = [];
    for (const p of bucketPoints(state.trace, channel)) {
      if (p.measured && p.toS >= fromS)
        points.push({ timeS: (p.fromS + p.toS) / 2, temperatureC: (p.lowC + p.highC) / 2 });
    }
    const estimate = timeToTarget(points, state.setup.rules.targetC, {
      fromS,
      plateau: expectedPlateau(state),
    });
    if (slowest === null || restS(estimate) > restS(slowest)) slowest = estimate;
  }
  return slowest;
}

function restS(estimate: TimeToTarget): number {
  return estimate.kind === 'estimate' ? estimate.restS : Number.POSITIVE_INFINITY;
}

/** Mean of the platens, measured or set, with 6 °C (set points: 10 °C) for errors; null when neither is known. */
function expectedPlateau(state: TrialScreenState): ExpectedPlateau | null {
  const measured: number[] = [];
  state.setup.roles.forEach((role, channel) => {
    const value = state.latest?.values[channel];
    if ((role === 'upper-platen' || role === 'lower-platen') && value?.kind === 'temperature') {
      measured.push(value.temperatureC);
    }
  });
  const set = state.setup.rules.platenSetPointC;
  const platens = measured.length > 0 ? measured : set === null ? [] : [set.upper, set.lower];
  if (platens.length === 0) return null;
  return {
    expectedC: (Math.min(...platens) + Math.max(...platens)) / 2,
    standardUncertaintyC: (measured.length > 0 ? 6 : 10) + (Math.max(...platens) - Math.min(...platens)) / 2,
  };
}
