import { moved } from '../screen-shell/list-window.ts';
import type { CycleFilter, RecordsState } from './RecordsState.ts';
import { type RecordsStep, stay } from './RecordsStep.ts';
import { windowAfter } from './reduce-chart-key.ts';
import { shownCycles } from './shown-cycles.ts';

export const ALL_CYCLES: CycleFilter = Object.freeze({ assemblyName: null, pressName: null });

type CyclesView = Extract<RecordsState['view'], { readonly kind: 'cycles' | 'cycle' | 'cycleChart' }>;

/** Opens the list; the log is read anew each time. */
export function openCycles(state: RecordsState): RecordsStep {
  return { state: { ...state, view: { kind: 'cycles', selected: 0 } }, intents: [{ kind: 'load-cycles' }] };
}

/** A key in the list of cycles, in one cycle, or in its chart. */
export function reduceCyclesKey(state: RecordsState, view: CyclesView, name: string): RecordsStep {
  switch (view.kind) {
    case 'cycles':
      return listKey(state, view.selected, name);
    case 'cycle':
      return cycleKey(state, view.cycleId, name);
    case 'cycleChart':
      return name === 'escape'
        ? stay({ ...state, traces: null, view: { kind: 'cycle', cycleId: view.cycleId } })
        : stay({ ...state, view: { ...view, window: windowAfter(state.traces, view.window, name) } });
  }
}

function listKey(state: RecordsState, selected: number, name: string): RecordsStep {
  const cycles = shownCycles(state);
  const cycle = cycles[selected]?.cycle;
  const filtered = (change: Partial<CycleFilter>) =>
    stay({
      ...state,
      cycleFilter: { ...state.cycleFilter, ...change },
      view: { kind: 'cycles', selected: 0 },
    });
  switch (name) {
    case 'escape':
    case 't':
      return stay({ ...state, view: { kind: 'trials', selected: 0 } });
    case 'r':
      return stay({ ...state, view: { kind: 'recipes', selected: 0 } });
    case 'a':
      return filtered({ assemblyName: nextOf(state, 'assemblyName') });
    case 'p':
      return filtered({ pressName: nextOf(state, 'pressName') });
    case 'up':
    case 'down':
      return stay({
        ...state,
        view: { kind: 'cycles', selected: moved(selected, name === 'up' ? -1 : 1, cycles.length) },
      });
    case 'enter':
      return cycle === undefined
        ? stay(state)
        : stay({ ...state, view: { kind: 'cycle', cycleId: cycle.cycleId } });
    default:
      return stay(state);
  }
}

function cycleKey(state: RecordsState, cycleId: string, name: string): RecordsStep {
  const cycles = shownCycles(state);
  const at = cycles.findIndex(({ cycle }) => cycle.cycleId === cycleId);
  switch (name) {
    case 'escape':
      return stay({ ...state, view: { kind: 'cycles', selected: Math.max(0, at) } });
    case 'up':
    case 'down': {
      const next = cycles[moved(at, name === 'up' ? -1 : 1, cycles.length)];
      return next === undefined
        ? stay(state)
        : stay({ ...state, view: { kind: 'cycle', cycleId: next.cycle.cycleId } });
    }
    case 'enter':
      return cycles[at]?.cycle.recordingId == null
        ? stay(state)
        : {
            state: { ...state, traces: null, view: { kind: 'cycleChart', cycleId, window: null } },
            intents: [{ kind: 'load-cycle-trace', cycleId }],
          };
    default:
      return stay(state);
  }
}

/** The next name to show alone, after the last all again. */
function nextOf({ cycles, cycleFilter }: RecordsState, key: keyof CycleFilter): string | null {
  const names = [...new Set((cycles ?? []).map(({ cycle }) => cycle[key]))].sort();
  const now = cycleFilter[key];
  return names[now === null ? 0 : names.indexOf(now) + 1] ?? null;
}
