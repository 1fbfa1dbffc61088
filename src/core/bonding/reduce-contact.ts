import type { RunEvent } from '../run/RunEvent.ts';
import { BONDING_TEXT } from '../text/bonding-text.ts';
import type { BondingState, BondingStep } from './BondingState.ts';
import { closeCycle, openCycle } from './mark-cycle.ts';
import { say } from './say.ts';

/** A contact this soon after the key is the same closing, and the sharper time of it, µs. Judgement, no source. */
const SAME_CLOSING_US = 5_000_000;

/**
 * Press closed, as the readings' path tells it. By the contact it starts a cycle; within 5 s after the key it is the
 * sharper time of the same closing. Any later contact while the closing runs is told, and starts nothing anew.
 */
export function reducePressClosed(
  state: BondingState,
  { pressClosed }: Extract<RunEvent, { kind: 'press-closed' }>,
  closedUs: number,
): BondingStep {
  const { under } = state;
  const { by, timeS } = pressClosed;
  const running = under !== null && under.openedUs === null;
  if (by === 'key')
    return [
      running && under.closedS === null ? { ...state, under: { ...under, closedS: timeS } } : state,
      [],
    ];
  if (by !== 'contact') return [state, []];
  if (!running) return closeCycle(state, closedUs, 'contact', timeS);
  if (under.closedBy === 'contact' && under.closedS !== null && Math.abs(under.closedS - timeS) < 0.001)
    return [state, []];
  const laterUs = closedUs - under.closedUs;
  if (under.closedBy === 'key' && Math.abs(laterUs) <= SAME_CLOSING_US) {
    const joined = { ...under, closedUs, closedBy: 'contact' as const, closedS: timeS };
    return [{ ...state, under: joined }, []];
  }
  return closeCycle(state, closedUs, 'contact', timeS);
}

/** The contact (or a key, told once more by the readings' path) says opened. */
export function reduceOpened(state: BondingState, openedUs: number): BondingStep {
  const { under } = state;
  return under === null || under.openedUs !== null ? [state, []] : openCycle(state, openedUs, 'contact');
}

/** The readings' path took the contact for a pedal: letting go says nothing of the opening. */
export function reduceLetGo(state: BondingState, atUs: number): BondingStep {
  const { under } = state;
  if (under === null || under.openedUs !== null) return [state, []];
  return [say({ ...state, under: { ...under, pedal: true } }, BONDING_TEXT.pedal, 'quiet', atUs), []];
}

/** A contact that closes again within a second only bounced: the readings' path takes its opening back, and so does the timer. */
export function withoutBounce(state: BondingState): BondingState {
  const { under, session } = state;
  if (under?.openedUs == null || under.openedBy !== 'contact' || session === null) return state;
  const { phase } = session.run;
  if (phase === 'opened' || phase === 'waiting') return state;
  return { ...state, under: { ...under, openedUs: null, openedBy: null } };
}
