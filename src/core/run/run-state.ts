import { liveWarnings } from './live-warnings.ts';
import type { RunState } from './RunEvent.ts';
import type { RunUnderWay } from './RunUnderWay.ts';

/** Where the present run stands, from the run itself (null: none is open), the number of runs so far and the latest reading. */
export function runState(run: RunUnderWay | null, runs: number, latestS: number): RunState {
  return {
    phase: run?.phase ?? 'waiting',
    runNumber: run?.number ?? runs,
    pressClosed: run?.pressClosed ?? null,
    onset: run?.onset ?? null,
    provisionalCrossing: run?.provisional ?? null,
    finalCrossing: run?.final ?? null,
    holdCountedS: run?.hold?.countedS ?? 0,
    ...(run?.hold == null ? {} : { holdDips: run.hold.dipsBeforeDone, holdSeen: run.hold.seen }),
    ...(run?.cure == null ? {} : { cureEquivalentS: run.cure.equivalentS }),
    spoilt: run !== null && run.spoiltReason !== null,
    warnings: run === null ? [] : liveWarnings(run),
    latestTimeS: Number.isFinite(latestS) ? latestS : null,
  };
}
