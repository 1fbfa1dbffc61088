import type { BondingState, BondingStep, CycleUnderWay } from './BondingState.ts';
import { platensNow } from './platens-now.ts';

/** The same mark again within this time is a bouncing key, µs. */
const REPEAT_US = 1_000_000;

/** Press closed at `atUs`. A cycle that was opened before is put aside until its last readings are in. */
export function closeCycle(state: BondingState, atUs: number, by: CycleUnderWay['closedBy']): BondingStep {
  const { job, under } = state;
  if (job === null || (under !== null && under.openedUs === null)) return [state, []];
  const platens = platensNow({ ...state, nowUs: Math.min(state.nowUs, atUs) });
  const of = (side: 'upper' | 'lower') => platens.find((one) => one.side === side)?.temperatureC ?? null;
  const { leastRecoveryS } = job.recipe;
  const sinceS = state.lastOpenedUs === null ? null : (atUs - state.lastOpenedUs) / 1e6;
  const next: CycleUnderWay = {
    closedUs: atUs,
    closedBy: by,
    openedUs: null,
    announced: false,
    platensC: { upper: of('upper'), lower: of('lower') },
    platenOut: platens.some(({ inside }) => inside === false),
    tooSoon: leastRecoveryS !== null && sinceS !== null && sinceS < leastRecoveryS,
    outsideSinceUs: null,
    wasOutside: false,
    unseen: false,
  };
  const intents = by === 'key' ? [{ kind: 'mark', what: 'press-closed', atUs } as const] : [];
  return [
    { ...state, under: next, pending: under ?? state.pending, latestMarkUs: atUs, asking: null },
    intents,
  ];
}

/** Press opened at `atUs`. */
export function openCycle(state: BondingState, atUs: number, by: 'key' | 'contact'): BondingStep {
  const { under } = state;
  if (under === null || under.openedUs !== null) return [state, []];
  const intents = by === 'key' ? [{ kind: 'mark', what: 'opened', atUs } as const] : [];
  return [
    { ...state, under: { ...under, openedUs: atUs }, lastOpenedUs: atUs, latestMarkUs: atUs, asking: null },
    intents,
  ];
}

/** Takes back the latest mark of the cycle that is not logged yet. */
export function undoMark(state: BondingState, atUs: number): BondingStep {
  const { under } = state;
  if (under === null) return [state, []];
  const what = under.openedUs === null ? 'press-closed' : 'opened';
  const without = what === 'opened' ? { ...under, openedUs: null } : null;
  return [{ ...state, under: without, latestMarkUs: null }, [{ kind: 'undo', what, atUs }]];
}

export function isRepeat({ latestMarkUs }: BondingState, atUs: number): boolean {
  return latestMarkUs !== null && atUs - latestMarkUs < REPEAT_US;
}
