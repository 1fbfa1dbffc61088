import type { StyledRow } from '../chart/StyledRow.ts';
import { trialName } from '../screen-home/next-step.ts';
import type { PageSize, ShellView } from '../screen-shell/ShellView.ts';
import { SHELL_KEYS, SHELL_TEXT } from '../text/home-text.ts';
import type { KeyHint } from '../text/keys-text.ts';
import { RECORDS_KEYS, RECORDS_TEXT } from '../text/records-text.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import { chartRows } from './chart-rows.ts';
import { wholeWindow } from './chart-window.ts';
import { cycleOf, cyclesKeys, cyclesTitle } from './cycles-head.ts';
import { cycleRows, cyclesRows } from './cycles-rows.ts';
import type { ChartWindow, RecordsState } from './RecordsState.ts';
import { runsOf } from './RecordsStep.ts';
import { recipesRows } from './recipes-rows.ts';
import { guideRowsOfSpeeds } from './speed-rows.ts';
import { trialRows } from './trial-rows.ts';
import { trialsRows } from './trials-rows.ts';

/** The records as title, body, keys and an open question. */
export function recordsView(
  state: RecordsState,
  unit: TemperatureUnit,
): Pick<ShellView, 'title' | 'badge' | 'body' | 'keys' | 'message'> {
  const trial = 'trialId' in state.view ? trialOf(state, state.view.trialId) : null;
  return {
    title: titleOf(state),
    badge: (trial?.simulated ?? cycleOf(state)?.cycle.simulated) ? SHELL_TEXT.simulated : null,
    body: (size) => bodyOf(state, unit, size),
    keys: keysOf(state),
    message: questionOf(state),
  };
}

function trialOf(state: RecordsState, trialId: string) {
  return state.trials.find((trial) => trial.trialId === trialId) ?? null;
}

function titleOf({ view, ...state }: RecordsState): string {
  switch (view.kind) {
    case 'trials':
      return RECORDS_TEXT.trialsTitle;
    case 'recipes':
      return RECORDS_TEXT.recipesTitle;
    case 'cycles':
    case 'cycle':
    case 'cycleChart':
      return cyclesTitle({ view, ...state });
    default: {
      const trial = trialOf({ view, ...state }, view.trialId);
      const what = trial === null ? view.trialId : trialName(trial);
      if (view.kind === 'trial') return RECORDS_TEXT.trialTitle(what, trial?.when ?? '');
      const numbers = view.runs.map((run) => run + 1);
      return RECORDS_TEXT.chartTitle(
        what,
        numbers.length === 1 ? RECORDS_TEXT.runOf(numbers[0]!) : RECORDS_TEXT.runsOf(numbers.join(', ')),
      );
    }
  }
}

function bodyOf(state: RecordsState, unit: TemperatureUnit, size: PageSize): readonly StyledRow[] {
  if (state.dialog?.kind === 'replay-speed') return guideRowsOfSpeeds(size);
  switch (state.view.kind) {
    case 'trials':
      return trialsRows(state, size);
    case 'recipes':
      return recipesRows(state, unit, size);
    case 'trial':
      return trialRows(state, state.view, unit, size);
    case 'chart':
    case 'cycleChart':
      return chartRows(state, state.view, unit, size);
    case 'cycles':
      return cyclesRows(state, size);
    case 'cycle':
      return cycleRows(state, unit, size);
  }
}

function questionOf(state: RecordsState): ShellView['message'] {
  const { dialog, view } = state;
  if (dialog === null || view.kind !== 'trial' || dialog.kind === 'replay-speed') return null;
  const ask =
    dialog.kind === 'initials'
      ? RECORDS_TEXT.initials
      : (dialog.decision === 'set-aside' ? RECORDS_TEXT.setAside : RECORDS_TEXT.takeIn)(view.selected + 1);
  return { text: `${ask}  ${dialog.text.slice(-36)}_`, role: 'strong' };
}

function keysOf(state: RecordsState): readonly KeyHint[] {
  const k = RECORDS_KEYS;
  if (state.dialog !== null)
    return state.dialog.kind === 'replay-speed'
      ? [k.speed, SHELL_KEYS.back]
      : [SHELL_KEYS.done, SHELL_KEYS.back];
  const end = [SHELL_KEYS.unit, SHELL_KEYS.help, SHELL_KEYS.back];
  switch (state.view.kind) {
    case 'trials':
      return [
        ...(state.trials.length > 1 ? [SHELL_KEYS.choose] : []),
        ...(state.trials.length > 0 ? [k.open] : []),
        k.recipes,
        k.cycles,
        ...end,
      ];
    case 'recipes':
      return [...(state.recipes.length > 1 ? [SHELL_KEYS.choose] : []), k.trials, k.cycles, ...end];
    case 'trial': {
      const runs = runsOf(state);
      const run = runs[state.view.selected];
      if (run === undefined) return [k.goOn, ...end];
      return [
        ...(runs.length > 1 ? [SHELL_KEYS.choose] : []),
        k.chart,
        ...(runs.length > 1 ? [k.pick, k.all] : []),
        k.replay,
        ...(run.decision.kind === 'set-aside' ? [] : [k.setAside]),
        ...(run.result.verdict === 'suspect' && run.decision.kind !== 'taken-in' ? [k.takeIn] : []),
        ...(run.decision.kind === 'automatic' ? [] : [k.automatic]),
        ...((state.loaded?.outcome.statistics.runs ?? 0) > 0 ? [k.accept] : []),
        k.goOn,
        ...end,
      ];
    }
    case 'chart':
      return [...chartKeys(state, state.view.window), k.nextRun, ...end];
    case 'cycleChart':
      return [...chartKeys(state, state.view.window, k.wholeCycle), ...end];
    case 'cycles':
    case 'cycle':
      return [...cyclesKeys(state), ...end];
  }
}

/** Keys of the chart that change it now: W only where it is not the whole, X only where the cursor is not there already. */
function chartKeys(
  { traces }: RecordsState,
  window: ChartWindow | null,
  whole: KeyHint = RECORDS_KEYS.whole,
): readonly KeyHint[] {
  if (window === null || traces === null) return [];
  const all = wholeWindow(traces);
  const crossingS = traces.find((trace) => trace.crossingS !== null)?.crossingS ?? null;
  const isWhole = all?.fromS === window.fromS && all.toS === window.toS && all.cursorS === window.cursorS;
  return [
    RECORDS_KEYS.cursor,
    RECORDS_KEYS.zoom,
    ...(isWhole ? [] : [whole]),
    ...(crossingS === null || crossingS === window.cursorS ? [] : [RECORDS_KEYS.target]),
  ];
}
