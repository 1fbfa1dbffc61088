import type { RunEvent } from '../run/RunEvent.ts';
import type { RunResult } from '../run/RunResult.ts';
import type { BondingEvent, BondingIntent, BondingState, BondingStep } from './BondingState.ts';
import { hasProbe } from './bond-line-now.ts';
import { finishCycle } from './finish-cycle.ts';
import { closeCycle } from './mark-cycle.ts';
import { watchPlatens } from './platens-now.ts';
import { reduceLetGo, reduceOpened, reducePressClosed, withoutBounce } from './reduce-contact.ts';
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
    intervalS: fresh ? intervalAfter(before, session) : before.intervalS,
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
    case 'contact-let-go':
      return reduceLetGo(state, when(event.timeS));
    case 'contact-again':
      return closeCycle(state, when(event.timeS), 'contact', event.timeS);
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

/** The reader's interval by its own clock; the readings come one by one, each with the state it left. */
function intervalAfter(
  { session: last, intervalS }: BondingState,
  { latestReading }: BondingState['session'] & object,
): number | null {
  const beforeS = last?.latestReading?.timeS;
  return beforeS === undefined || latestReading === null
    ? intervalS
    : nextIntervalS(intervalS, latestReading.timeS - beforeS);
}
