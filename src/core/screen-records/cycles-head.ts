import { SHELL_KEYS } from '../text/home-text.ts';
import type { KeyHint } from '../text/keys-text.ts';
import { neutralise } from '../text/neutralise.ts';
import { RECORDS_KEYS, RECORDS_TEXT } from '../text/records-text.ts';
import type { LoadedCycle, RecordsState } from './RecordsState.ts';
import { shownCycles } from './shown-cycles.ts';

/** The cycle that is open; null in the list. */
export function cycleOf({ cycles, view }: Pick<RecordsState, 'cycles' | 'view'>): LoadedCycle | null {
  if (view.kind !== 'cycle' && view.kind !== 'cycleChart') return null;
  return (cycles ?? []).find(({ cycle }) => cycle.cycleId === view.cycleId) ?? null;
}

export function cyclesTitle(state: RecordsState): string {
  const open = cycleOf(state);
  if (open === null)
    return neutralise(RECORDS_TEXT.cyclesTitle(state.cycleFilter.assemblyName, state.cycleFilter.pressName));
  const what = `${open.cycle.assemblyName} on ${open.cycle.pressName}`;
  const title = state.view.kind === 'cycle' ? RECORDS_TEXT.cycleTitle : RECORDS_TEXT.cycleChartTitle;
  return neutralise(title(what, open.when));
}

export function cyclesKeys(state: RecordsState): readonly KeyHint[] {
  const k = RECORDS_KEYS;
  switch (state.view.kind) {
    case 'cycles': {
      const shown = shownCycles(state);
      const names = (key: 'assemblyName' | 'pressName') =>
        new Set((state.cycles ?? []).map(({ cycle }) => cycle[key])).size;
      return [
        ...(shown.length > 1 ? [SHELL_KEYS.choose] : []),
        ...(shown.length > 0 ? [k.openCycle] : []),
        ...(names('assemblyName') > 0 ? [k.assembly] : []),
        ...(names('pressName') > 0 ? [k.press] : []),
        k.trials,
        k.recipes,
      ];
    }
    case 'cycle':
      return [
        ...(cycleOf(state)?.cycle.recordingId == null ? [] : [k.chart]),
        ...(shownCycles(state).length > 1 ? [k.newer] : []),
      ];
    default:
      return [];
  }
}
