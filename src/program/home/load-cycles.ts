import { bandOfRuns } from '../../core/screen/band-of-runs.ts';
import type { LoadedCycle, RunTrace } from '../../core/screen-records/RecordsState.ts';
import type { Store } from '../../core/store/Store.ts';
import { recipeRuns } from '../bonding/prepare-job.ts';
import { localWhen } from './load-facts.ts';
import { readingsBetween } from './load-traces.ts';

/** Shown before press closed and after the opening, s. */
const AROUND_S = 30;

/** Every logged cycle, the newest first. */
export function loadCycles(store: Store): readonly LoadedCycle[] {
  return store
    .cycles()
    .map((cycle) => ({ cycle, when: localWhen(cycle.closedAt) }))
    .reverse();
}

/** What a cycle's recording holds of it, counted from press closed, with the runs its recipe rests on behind it. Empty where there is nothing. */
export function loadCycleTrace(store: Store, cycleId: string): readonly RunTrace[] {
  const cycle = store.cycles().find((one) => one.cycleId === cycleId);
  const zeroS = cycle?.recordedAtS ?? null;
  const recording = cycle?.recordingId == null ? undefined : store.recording(cycle.recordingId);
  if (cycle === undefined || recording === undefined || zeroS === null) return [];
  const recipe = store
    .recipes()
    .find(
      ({ assemblyName, pressName, version }) =>
        assemblyName === cycle.assemblyName &&
        pressName === cycle.pressName &&
        version === cycle.recipeVersion,
    );
  const { roles } = recording.head;
  const probe = roles.some((role) => role.startsWith('bond-line'));
  return [
    {
      run: 0,
      roles,
      closedKnown: true,
      targetC: cycle.targetC,
      crossingS: null,
      openedS: cycle.result === 'left' ? null : cycle.dwellHeldS,
      readings: readingsBetween(recording, zeroS - AROUND_S, zeroS + cycle.dwellHeldS + AROUND_S).map(
        ({ timeS, values }) => ({ timeS: timeS - zeroS, values }),
      ),
      band: recipe === undefined || !probe ? [] : bandOfRuns(recipeRuns(store, recipe)),
    },
  ];
}
