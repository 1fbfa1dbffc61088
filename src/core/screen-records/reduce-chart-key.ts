import { moveCursor, wholeSpan, wholeWindow, zoom } from './chart-window.ts';
import type { RecordsState } from './RecordsState.ts';
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
  const { traces } = state;
  const span = traces === null ? null : wholeSpan(traces);
  if (traces === null || span === null || view.window === null) return stay(view.window);
  switch (name) {
    case 'left':
      return stay(moveCursor(view.window, -1, span));
    case 'right':
      return stay(moveCursor(view.window, 1, span));
    case 'up':
      return stay(zoom(view.window, 'in', span));
    case 'down':
      return stay(zoom(view.window, 'out', span));
    case 'w':
      return stay(wholeWindow(traces));
    case 'x': {
      const crossingS = traces.find((trace) => trace.crossingS !== null)?.crossingS ?? null;
      if (crossingS === null) return stay(view.window);
      const lengthS = view.window.toS - view.window.fromS;
      const inside = crossingS >= view.window.fromS && crossingS <= view.window.toS;
      const fromS = inside
        ? view.window.fromS
        : Math.min(span[1] - lengthS, Math.max(span[0], crossingS - lengthS / 2));
      return stay({ fromS, toS: fromS + lengthS, cursorS: crossingS });
    }
    default:
      return stay(view.window);
  }
}
