import type { LoadedCycle, RecordsState } from './RecordsState.ts';

/** The cycles of the chosen assembly and press, newest first. */
export function shownCycles({
  cycles,
  cycleFilter,
}: Pick<RecordsState, 'cycles' | 'cycleFilter'>): readonly LoadedCycle[] {
  const { assemblyName, pressName } = cycleFilter;
  return (cycles ?? []).filter(
    ({ cycle }) =>
      (assemblyName === null || cycle.assemblyName === assemblyName) &&
      (pressName === null || cycle.pressName === pressName),
  );
}
