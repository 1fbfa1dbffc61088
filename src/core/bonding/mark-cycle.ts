import { BONDING_TEXT } from '../text/bonding-text.ts';
import type { BondingState, BondingStep, CycleUnderWay } from './BondingState.ts';
import { isEarly } from './finish-cycle.ts';
import { platensNow } from './platens-now.ts';
import { say } from './say.ts';

/** The same mark again within this time is a bouncing key, µs. */
const REPEAT_US = 1_000_000;

/**
 * Press closed at `atUs`. A cycle that was opened before is put aside until its last readings are in. While a closing
 * runs its time is never started anew: another mark is told and changes nothing.
 */
export function closeCycle(
  state: BondingState,
  atUs: number,
  by: CycleUnderWay['closedBy'],
  closedS: number | null = null,
): BondingStep {
  const { job, under } = state;
  if (job === null) return [state, []];
  if (under !== null && under.openedUs === null)
    return [say(state, BONDING_TEXT.closedAlready((atUs - under.closedUs) / 1e6, by)), []];
  const platens = platensNow({ ...state, nowUs: Math.min(state.nowUs, atUs) });
  const of = (side: 'upper' | 'lower') => platens.find((one) => one.side === side)?.temperatureC ?? null;
  const { leastRecoveryS, dwellS } = job.recipe;
  const sinceS = state.lastOpenedUs === null ? null : (atUs - state.lastOpenedUs) / 1e6;
  const next: CycleUnderWay = {
    closedUs: atUs,
    closedBy: by,
    closedS,
    openedUs: null,
    openedBy: null,
    pedal: false,
    announced: false,
    platensC: { upper: of('upper'), lower: of('lower') },
    platenOut: platens.some(({ inside }) => inside === false),
    tooSoon: leastRecoveryS !== null && sinceS !== null && sinceS < leastRecoveryS,
    band: null,
    bandSeen: false,
    wasOutside: false,
    unseen: false,
  };
  const intents = by === 'key' ? [{ kind: 'mark', what: 'press-closed', by: 'key', atUs } as const] : [];
  const heldS = under?.openedUs == null ? null : (under.openedUs - under.closedUs) / 1e6;
  const told =
    heldS === null || !isEarly(heldS, dwellS)
      ? state
      : say(state, BONDING_TEXT.closedAnew(heldS, dwellS), 'caution', atUs);
  return [
    { ...told, under: next, pending: under ?? state.pending, latestMarkUs: atUs, asking: null },
    intents,
  ];
}

/** Press opened at `atUs`. */
export function openCycle(state: BondingState, atUs: number, by: 'key' | 'contact'): BondingStep {
  const { under } = state;
  if (under === null || under.openedUs !== null) return [state, []];
  const intents = by === 'key' ? [{ kind: 'mark', what: 'opened', by: 'key', atUs } as const] : [];
  return [
    {
      ...state,
      under: { ...under, openedUs: atUs, openedBy: by },
      lastOpenedUs: atUs,
      latestMarkUs: atUs,
      asking: null,
    },
    intents,
  ];
}

/** Takes back the latest mark of the cycle that is not logged yet. */
export function undoMark(state: BondingState, atUs: number): BondingStep {
  const { under } = state;
  if (under === null) return [state, []];
  const what = under.openedUs === null ? 'press-closed' : 'opened';
  const without = what === 'opened' ? { ...under, openedUs: null, openedBy: null } : null;
  return [{ ...state, under: without, latestMarkUs: null }, [{ kind: 'undo', what, atUs }]];
}

export function isRepeat({ latestMarkUs }: BondingState, atUs: number): boolean {
  return latestMarkUs !== null && atUs - latestMarkUs < REPEAT_US;
}
