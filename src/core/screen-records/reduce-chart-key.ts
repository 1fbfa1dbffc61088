import { moveCursor, wholeSpan, wholeWindow, zoom } from './chart-window.ts';
import type { ChartWindow, RecordsState } from './RecordsState.ts';
import type { RecordsStep } from './RecordsStep.ts';

type ChartView = Extract<RecordsState['view'], { readonly kind: 'chart' }>;

/** A key in the chart: cursor, zoom, the whole, another run, back to the trial. */
export function reduceChartKey(state: RecordsState, view: ChartView, name: string): RecordsStep {
  const stay = (window: ChartView['window']): RecordsStep => ({
    state: { ...state, view: { ...view, window } },
    intents: [],
  });
  if (name === 'escape') {
    const { trialId } = view;
    return {
      state: {
        ...state,
        traces: null,
        view: { kind: 'trial', trialId, selected: view.runs[0] ?? 0, picked: [] },
      },
      intents: [],
    };
  }
  if (name === 'n') {
    const count = state.loaded?.outcome.runs.length ?? 0;
    if (count === 0) return stay(view.window);
    const runs = [((view.runs.at(-1) ?? -1) + 1) % count];
    return {
      state: { ...state, traces: null, view: { ...view, runs, window: null } },
      intents: [{ kind: 'load-traces', trialId: view.trialId, runs }],
    };
  }
  return stay(windowAfter(state.traces, view.window, name));
}

/** The chart's window after a key: cursor, zoom, the whole, the crossing. */
export function windowAfter(
  traces: RecordsState['traces'],
  window: ChartWindow | null,
  name: string,
): ChartWindow | null {
  const span = traces === null ? null : wholeSpan(traces);
  if (traces === null || span === null || window === null) return window;
  switch (name) {
    case 'left':
      return moveCursor(window, -1, span);
    case 'right':
      return moveCursor(window, 1, span);
    case 'up':
      return zoom(window, 'in', span);
    case 'down':
      return zoom(window, 'out', span);
    case 'w':
      return wholeWindow(traces);
    case 'x': {
      const crossingS = traces.find((trace) => trace.crossingS !== null)?.crossingS ?? null;
      if (crossingS === null) return window;
      const lengthS = window.toS - window.fromS;
      const inside = crossingS >= window.fromS && crossingS <= window.toS;
      const fromS = inside
        ? window.fromS
        : Math.min(span[1] - lengthS, Math.max(span[0], crossingS - lengthS / 2));
      return { fromS, toS: fromS + lengthS, cursorS: crossingS };
    }
    default:
      return window;
  }
}
