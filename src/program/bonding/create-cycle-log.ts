import { hostname } from 'node:os';
import type { BondingCycle, CycleFacts } from '../../core/bonding/BondingCycle.ts';
import type { BondingState, CycleUnderWay } from '../../core/bonding/BondingState.ts';
import { hasProbe } from '../../core/bonding/bond-line-now.ts';
import { finishCycle } from '../../core/bonding/finish-cycle.ts';
import type { Store } from '../../core/store/Store.ts';
import { newRecordingId } from '../trials/new-trial-id.ts';

/** A closing is renewed in the store this often, ms. */
const RENEW_MS = 1000;

export interface CycleLogOptions {
  readonly store: Pick<Store, 'saveClosing' | 'dropClosing' | 'saveCycle'>;
  /** Of the reader's clock, µs. */
  readonly nowUs: () => number;
  readonly initials: string | null;
  readonly recordingId: () => string | null;
}

export interface CycleLog {
  /** Keeps what is under way, so that a killed program loses nothing. */
  keep(state: BondingState): void;
  /** Logs a finished cycle. One that cannot be put on disk waits and is tried again. */
  log(state: BondingState, facts: CycleFacts): BondingCycle;
  /** Why the store could not be written; null where it can. */
  readonly trouble: string | null;
  /** The last chance: throws what the store says where a cycle is still not on disk. */
  close(): void;
}

interface Kept {
  readonly cycleId: string;
  readonly closedAt: string;
  savedMs: number;
  openedUs: number | null;
}

/** Cycles and closings under way of one program, on their way to the store. */
export function createCycleLog({ store, nowUs, initials, recordingId }: CycleLogOptions): CycleLog {
  const kept = new Map<number, Kept>();
  const waiting: BondingCycle[] = [];
  let trouble: string | null = null;
  let triedMs = 0;

  const attempt = (work: () => void): boolean => {
    try {
      work();
      trouble = null;
      return true;
    } catch (error) {
      trouble = error instanceof Error ? error.message : String(error);
      return false;
    }
  };
  const namesOf = (closedUs: number, speed: number): Kept => {
    const known = kept.get(closedUs);
    if (known !== undefined) return known;
    const agoMs = (nowUs() - closedUs) / 1000 / speed;
    const closedAt = new Date(Date.now() - agoMs).toISOString();
    const fresh = { cycleId: newRecordingId(), closedAt, savedMs: 0, openedUs: null };
    kept.set(closedUs, fresh);
    return fresh;
  };
  const cycleOf = ({ job }: BondingState, { closedUs, ...facts }: CycleFacts): BondingCycle => {
    if (job === null) throw new TypeError('a cycle is timed with a recipe');
    const { recipe, simulated, speed } = job;
    const { cycleId, closedAt } = namesOf(closedUs, speed);
    return {
      ...facts,
      cycleId,
      closedAt,
      assemblyName: recipe.assemblyName,
      pressName: recipe.pressName,
      recipeVersion: recipe.version,
      recordingId: recordingId(),
      simulated: simulated || recipe.simulated,
      initials,
    };
  };
  const keepOne = (state: BondingState, cycle: CycleUnderWay, nowMs: number): void => {
    const { job } = state;
    if (job === null) return;
    const names = namesOf(cycle.closedUs, job.speed);
    if (nowMs - names.savedMs < RENEW_MS && names.openedUs === cycle.openedUs) return;
    names.savedMs = nowMs;
    names.openedUs = cycle.openedUs;
    const end = { probe: hasProbe(state), endUs: nowUs(), unwatched: 'program-stopped' as const };
    const closing = {
      cycle: cycleOf(state, finishCycle(cycle, job, null, end)),
      seenAt: new Date().toISOString(),
      hostName: hostname(),
      processId: process.pid,
    };
    attempt(() => store.saveClosing(closing));
  };
  const writeWaiting = (): void => {
    while (waiting[0] !== undefined) {
      const [cycle] = waiting;
      if (!attempt(() => store.saveCycle(cycle))) return;
      waiting.shift();
    }
  };

  return {
    keep(state) {
      const nowMs = performance.now() + RENEW_MS;
      const now = [state.pending, state.under].filter((cycle) => cycle !== null);
      for (const cycle of now) keepOne(state, cycle, nowMs);
      for (const [closedUs, { cycleId }] of kept) {
        if (now.some((cycle) => cycle.closedUs === closedUs)) continue;
        kept.delete(closedUs);
        if (!waiting.some((cycle) => cycle.cycleId === cycleId)) attempt(() => store.dropClosing(cycleId));
      }
      if (waiting.length > 0 && nowMs - triedMs >= RENEW_MS) {
        triedMs = nowMs;
        writeWaiting();
      }
    },
    log(state, facts) {
      const cycle = cycleOf(state, facts);
      waiting.push(cycle);
      writeWaiting();
      return cycle;
    },
    get trouble() {
      return trouble;
    },
    close() {
      for (const cycle of waiting.splice(0)) store.saveCycle(cycle);
    },
  };
}
