import { staleAfterS } from '../screen/stale-after-s.ts';
import type { WarmUpScreenState } from './WarmUpScreen.ts';

/** How the platens stand, in one word. Old readings are never shown as if they were now. */
export type WarmUpStanding =
  | 'no-reader'
  | 'no-reading'
  | 'stale'
  | 'fault'
  | 'cold'
  | 'heating'
  | 'cooling'
  | 'near'
  | 'above'
  | 'below'
  | 'in-band'
  | 'ready';

/** A reader may send once a second, s; how old its reading may be is counted from its own interval once that is known. */
const SLOWEST_INTERVAL_S = 1;
/** So near the set point a controller throttles, °C. Common practice, no source. */
export const NEAR_C = 25;
/** A platen that rose by less is not heated yet, °C; one that fell by so much within a minute cools. Judgement, no source. */
const RISEN_C = 5;
const FALLEN_C = 1;
const FALLEN_OVER_S = 60;

export function warmUpStanding(state: WarmUpScreenState): WarmUpStanding {
  const { link, latestUs, ready } = state;
  if (link.kind === 'lost') return 'no-reader';
  if (latestUs === null) return 'no-reading';
  if (readingAgeS(state)! > staleAfterS(Math.max(SLOWEST_INTERVAL_S, state.intervalS ?? 0), state.speed))
    return 'stale';
  if (state.faults.some((fault) => fault !== null)) return 'fault';
  if (ready.ready) return 'ready';
  const platens = ready.platens.map(({ temperatureC, setPointC, inside }) => ({
    belowC: temperatureC === null ? null : setPointC - temperatureC,
    inside,
  }));
  if (platens.some(({ belowC }) => belowC === null)) return 'no-reading';
  const outside = platens.filter(({ inside }) => !inside).map(({ belowC }) => belowC ?? 0);
  if (outside.length === 0) return 'in-band';
  if (outside.every((belowC) => belowC < 0)) return 'above';
  if (Math.max(...outside) > NEAR_C) return isCooling(state) ? 'cooling' : isCold(state) ? 'cold' : 'heating';
  return state.wasInside ? 'below' : 'near';
}

/** Age of the latest reading, s; null before the first. */
export function readingAgeS({ latestUs, nowUs }: WarmUpScreenState): number | null {
  return latestUs === null ? null : Math.max(0, (nowUs - latestUs) / 1e6);
}

/** No platen has risen yet. */
function isCold({ ready, lowestC }: WarmUpScreenState): boolean {
  return ready.platens.every(
    ({ temperatureC }, i) => temperatureC !== null && temperatureC - (lowestC[i] ?? temperatureC) < RISEN_C,
  );
}

/** Every platen fell over the last minute. */
function isCooling({ trace, ready }: WarmUpScreenState): boolean {
  const latestS = ready.timeS ?? 0;
  const before = trace.closed.findLast((bucket) => bucket.latestS <= latestS - FALLEN_OVER_S);
  if (before === undefined) return false;
  return ready.platens.every(({ temperatureC }, i) => {
    const then = before.channels[i];
    return then?.measured === true && temperatureC !== null && then.lowC - temperatureC > FALLEN_C;
  });
}
