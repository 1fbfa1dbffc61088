import type { RunEvent } from '../run/RunEvent.ts';
import type { RunResult } from '../run/RunResult.ts';
import type { BondingEvent, BondingIntent, BondingState, BondingStep } from './BondingState.ts';
import { bandAt } from './band-at.ts';
import { bondLineNow, hasProbe } from './bond-line-now.ts';
import { finishCycle } from './finish-cycle.ts';
import { closeCycle, openCycle } from './mark-cycle.ts';

/** Outside the recipe's band for longer is flagged, µs. Judgement, no source. */
const OUTSIDE_US = 2_000_000;

/** What the readings and the press's contact say. */
export function reduceReadings(
  before: BondingState,
  { state: session, events, atUs }: Extract<BondingEvent, { kind: 'session' }>,
): BondingStep {
  const fresh = session.latestReading !== null && session.latestReading !== before.session?.latestReading;
  let state: BondingState = {
    ...before,
    session,
    latestUs: fresh ? atUs : before.latestUs,
    nowUs: Math.max(before.nowUs, atUs),
    link: fresh && before.link.kind === 'lost' ? { kind: 'open' } : before.link,
  };
  const intents: BondingIntent[] = [];
  for (const event of events) {
    const [next, wishes] = reduceRunEvent(state, event, atUs);
    state = next;
    intents.push(...wishes);
  }
  return [watchBand(state, atUs), intents];
}

function reduceRunEvent(state: BondingState, event: RunEvent, atUs: number): BondingStep {
  const latestS = state.session?.run.latestTimeS ?? null;
  const when = (timeS: number) => (latestS === null ? atUs : atUs - Math.max(0, (latestS - timeS) * 1e6));
  switch (event.kind) {
    case 'press-closed':
      return event.pressClosed.by === 'contact'
        ? closeCycle(state, when(event.pressClosed.timeS), 'contact')
        : [state, []];
    case 'opened':
      return openCycle(state, when(event.timeS), 'contact');
    case 'run-finished':
      return hasProbe(state) ? logged(state, event.result, atUs) : [state, []];
    default:
      return [state, []];
  }
}

/** Logs the cycle that was opened; one that is still closed goes on. */
export function logged(
  state: BondingState,
  result: RunResult | null,
  atUs: number,
  leaving = false,
): BondingStep {
  const { job, pending, under } = state;
  const over = pending ?? (under !== null && (under.openedUs !== null || leaving) ? under : null);
  if (job === null || over === null) return [state, []];
  const facts = finishCycle(over, job, result, { probe: hasProbe(state), endUs: atUs });
  const after = pending === null ? { ...state, under: null } : { ...state, pending: null };
  return [after, [{ kind: 'log-cycle', facts }]];
}

function watchBand(state: BondingState, atUs: number): BondingState {
  const { under, job } = state;
  if (under === null || job === null || under.openedUs !== null) return state;
  const now = bondLineNow(state);
  const band = now.kind === 'known' ? bandAt(job.band, (atUs - under.closedUs) / 1e6) : null;
  const outside =
    now.kind === 'known' &&
    band !== null &&
    (now.temperatureC < band.lowC - job.bandToleranceC || now.temperatureC > band.highC + job.bandToleranceC);
  const outsideSinceUs = outside ? (under.outsideSinceUs ?? atUs) : null;
  const wasOutside = under.wasOutside || (outsideSinceUs !== null && atUs - outsideSinceUs > OUTSIDE_US);
  if (outsideSinceUs === under.outsideSinceUs && wasOutside === under.wasOutside) return state;
  return { ...state, under: { ...under, outsideSinceUs, wasOutside } };
}
