import { moved } from '../screen-shell/list-window.ts';
import { RECORDS_TEXT } from '../text/records-text.ts';
import type { RecordsDialog, RecordsState } from './RecordsState.ts';
import { type RecordsStep, runsOf, stay } from './RecordsStep.ts';
import { reduceChartKey } from './reduce-chart-key.ts';
import { ALL_CYCLES, openCycles, reduceCyclesKey } from './reduce-cycles-key.ts';
import { reduceRecordsDialog } from './reduce-records-dialog.ts';

const LONGEST_TEXT = 200;

export function startRecords(
  lists: Pick<RecordsState, 'trials' | 'recipes'>,
  trialId: string | null,
): RecordsStep {
  const base = { ...lists, cycles: null, cycleFilter: ALL_CYCLES, loaded: null, traces: null, dialog: null };
  return trialId === null
    ? { state: { ...base, view: { kind: 'trials', selected: 0 } }, intents: [] }
    : {
        state: { ...base, view: { kind: 'trial', trialId, selected: 0, picked: [] } },
        intents: [{ kind: 'load-trial', trialId }],
      };
}

/** Whether typed characters are text now. */
export function recordsTakeText(state: RecordsState): boolean {
  return state.dialog !== null && 'text' in state.dialog;
}

export function typeIntoRecords(state: RecordsState, character: string): RecordsState {
  const { dialog } = state;
  if (dialog === null || !('text' in dialog) || dialog.text.length >= LONGEST_TEXT || character < ' ')
    return state;
  return { ...state, dialog: { ...dialog, text: dialog.text + character } };
}

/** A key in the records. */
export function reduceRecords(state: RecordsState, name: string): RecordsStep {
  if (state.dialog !== null) return reduceRecordsDialog(state, state.dialog, name);
  const { view } = state;
  switch (view.kind) {
    case 'trials':
      return trialsKey(state, view.selected, name);
    case 'recipes':
      return recipesKey(state, view.selected, name);
    case 'trial':
      return trialKey(state, view, name);
    case 'chart':
      return reduceChartKey(state, view, name);
    case 'cycles':
    case 'cycle':
    case 'cycleChart':
      return reduceCyclesKey(state, view, name);
  }
}

function trialsKey(state: RecordsState, selected: number, name: string): RecordsStep {
  const trial = state.trials[selected];
  switch (name) {
    case 'escape':
      return { state: null, intents: [] };
    case 'up':
    case 'down':
      return stay({
        ...state,
        view: { kind: 'trials', selected: moved(selected, name === 'up' ? -1 : 1, state.trials.length) },
      });
    case 'r':
      return stay({ ...state, view: { kind: 'recipes', selected: 0 } });
    case 'c':
      return openCycles(state);
    case 'enter':
      return trial === undefined
        ? stay(state)
        : {
            state: {
              ...state,
              loaded: null,
              view: { kind: 'trial', trialId: trial.trialId, selected: 0, picked: [] },
            },
            intents: [{ kind: 'load-trial', trialId: trial.trialId }],
          };
    default:
      return stay(state);
  }
}

function recipesKey(state: RecordsState, selected: number, name: string): RecordsStep {
  switch (name) {
    case 'escape':
    case 't':
      return stay({ ...state, view: { kind: 'trials', selected: 0 } });
    case 'c':
      return openCycles(state);
    case 'up':
    case 'down':
      return stay({
        ...state,
        view: { kind: 'recipes', selected: moved(selected, name === 'up' ? -1 : 1, state.recipes.length) },
      });
    default:
      return stay(state);
  }
}

type TrialView = Extract<RecordsState['view'], { readonly kind: 'trial' }>;

function trialKey(state: RecordsState, view: TrialView, name: string): RecordsStep {
  const runs = runsOf(state);
  const run = runs[view.selected];
  const { trialId, selected, picked } = view;
  const ask = (dialog: RecordsDialog): RecordsStep => stay({ ...state, dialog });
  switch (name) {
    case 'escape': {
      const at = state.trials.findIndex((trial) => trial.trialId === trialId);
      return stay({ ...state, view: { kind: 'trials', selected: Math.max(0, at) } });
    }
    case 'up':
    case 'down':
      return stay({
        ...state,
        view: { ...view, selected: moved(selected, name === 'up' ? -1 : 1, runs.length) },
      });
    case 'g':
      return { state, intents: [{ kind: 'start-trial', plan: planOf(state, trialId), goOnWith: trialId }] };
    case 'i':
      return (state.loaded?.outcome.statistics.runs ?? 0) > 0
        ? ask({ kind: 'initials', text: '' })
        : stay(state);
  }
  if (run === undefined) return stay(state);
  switch (name) {
    case 'space': {
      const toggled = picked.includes(selected)
        ? picked.filter((one) => one !== selected)
        : [...picked, selected].sort((a, b) => a - b);
      return stay({ ...state, view: { ...view, picked: toggled } });
    }
    case 'enter':
      return openChart(state, trialId, picked.length > 0 ? picked : [selected]);
    case 'a':
      return openChart(
        state,
        trialId,
        runs.map((_, i) => i),
      );
    case 'x':
      return ask({ kind: 'decision', decision: 'set-aside', text: '' });
    case 't':
      return run.result.verdict === 'suspect'
        ? ask({ kind: 'decision', decision: 'taken-in', text: '' })
        : { ...stay(state), notice: { text: RECORDS_TEXT.onlySuspect, tone: 'caution' } };
    case 'b':
      return run.decision.kind === 'automatic'
        ? stay(state)
        : {
            state,
            intents: [{ kind: 'decide-run', trialId, run: selected, decision: 'automatic', reason: '' }],
          };
    case 'p':
      return ask({ kind: 'replay-speed' });
    default:
      return stay(state);
  }
}

function openChart(state: RecordsState, trialId: string, runs: readonly number[]): RecordsStep {
  return {
    state: { ...state, traces: null, view: { kind: 'chart', trialId, runs, window: null } },
    intents: [{ kind: 'load-traces', trialId, runs }],
  };
}

/** Going on takes press and assembly from the trial; the rest comes from what was used last. */
function planOf(state: RecordsState, trialId: string) {
  const trial = state.trials.find((one) => one.trialId === trialId);
  return {
    pressName: trial?.pressName ?? null,
    assemblyName: trial?.assemblyName ?? null,
    reader: trial?.simulated ? 'simulated' : null,
    readerUnit: null,
    ring: null,
    coating: null,
    probe: null,
    initials: null,
  };
}
