import type { RunEvent } from '../run/RunEvent.ts';
import type { RunResult } from '../run/RunResult.ts';
import type { BondingEvent, BondingIntent, BondingState, BondingStep } from './BondingState.ts';
import { hasProbe } from './bond-line-now.ts';
import { finishCycle } from './finish-cycle.ts';
import { watchPlatens } from './platens-now.ts';
import { reduceOpened, reducePressClosed, withoutBounce } from './reduce-contact.ts';
import { nextIntervalS } from './stale-limit-s.ts';
import { watchBand } from './watch-band.ts';

/** What the readings and the press's contact say. */
export function reduceReadings(
  before: BondingState,
  { state: session, events, atUs }: Extract<BondingEvent, { kind: 'session' }>,
): BondingStep {
  const fresh = session.latestReading !== null && session.latestReading !== before.session?.latestReading;
  let state: BondingState = {
    ...before,
    session,
    ...(fresh ? rateAfter(before, session) : {}),
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
  state = watchBand(withoutBounce(state), atUs);
  return [fresh ? { ...state, platens: watchPlatens(state, atUs) } : state, intents];
}

function reduceRunEvent(state: BondingState, event: RunEvent, atUs: number): BondingStep {
  const latestS = state.session?.run.latestTimeS ?? null;
  const when = (timeS: number) => (latestS === null ? atUs : atUs - Math.max(0, (latestS - timeS) * 1e6));
  switch (event.kind) {
    case 'press-closed':
      return reducePressClosed(state, event, when(event.pressClosed.timeS));
    case 'opened':
      return reduceOpened(state, when(event.timeS));
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

/** The reader's interval by its own clock: several readings may have come since the last look. */
function rateAfter(
  { session: last, intervalS, readingCount }: BondingState,
  { latestReading, counts }: BondingState['session'] & object,
): Pick<BondingState, 'intervalS' | 'readingCount'> {
  const readings = counts.readings - readingCount;
  const beforeS = last?.latestReading?.timeS;
  if (beforeS === undefined || latestReading === null || readings <= 0)
    return { intervalS, readingCount: counts.readings };
  return {
    intervalS: nextIntervalS(intervalS, (latestReading.timeS - beforeS) / readings),
    readingCount: counts.readings,
  };
}
