import type { TraceBuckets } from '../chart/TraceBuckets.ts';
import type { CoolingPoint, CoolingWait } from '../cooling/CoolingWait.ts';
import { coolingWait } from '../cooling/cooling-wait.ts';
import { bondLineChannels } from './bond-line-channels.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

/** Room temperature where neither a channel nor a rule tells it, °C: as the run's own check of a warm carrier. */
const USUAL_ROOM_C = 25;
const LOOKED_AT_S = 60;
/** The part leaves the press first, s. */
const AFTER_OPENING_S = 5;
/** A second between two points says all that a cooling part has to say. */
const STEP_S = 1;

/** How the carrier cools towards the next run, from the main bond-line probe. Null without a sound reading now. */
export function coolingNow(state: TrialScreenState): CoolingWait | null {
  const { roles, rules } = state.setup;
  const channel = bondLineChannels(roles)[0];
  if (channel === undefined || state.latest?.values[channel]?.kind !== 'temperature') return null;
  // What lies before the press was opened is heating, not cooling.
  const openS =
    (state.lastResult?.openedS ?? state.lastResult?.endedS ?? Number.NEGATIVE_INFINITY) + AFTER_OPENING_S;
  const points = latestPoints(state.trace, channel, Math.max(state.latest.timeS - LOOKED_AT_S, openS));
  const room = roles.indexOf('ambient');
  const value = room < 0 ? undefined : state.latest.values[room];
  const measuredC = value?.kind === 'temperature' ? value.temperatureC : null;
  return coolingWait(points, {
    ambientC: measuredC ?? rules.ambientC ?? USUAL_ROOM_C,
    warmLimitC: rules.warmCarrierLimitC,
    measured: measuredC !== null,
  });
}

/** One point a second of the latest stretch, oldest first. */
function latestPoints(trace: TraceBuckets, channel: number, fromS: number): readonly CoolingPoint[] {
  const points: CoolingPoint[] = [];
  let takenS = Number.POSITIVE_INFINITY;
  for (let i = trace.closed.length; i >= 0; i--) {
    const bucket = i === trace.closed.length ? trace.open : trace.closed[i];
    if (bucket === null || bucket === undefined || takenS - bucket.latestS < STEP_S) continue;
    if (bucket.latestS < fromS) break;
    const one = bucket.channels[channel];
    if (!one?.measured) continue;
    takenS = bucket.latestS;
    points.push({ timeS: takenS, temperatureC: one.lastC });
  }
  return points.reverse();
}
