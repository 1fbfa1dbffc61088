import type { ChartWindow, RunTrace } from './RecordsState.ts';

const SHORTEST_S = 2;
const STEPS = 60;

/** First and last time of all traces, s; null when none has a reading. */
export function wholeSpan(traces: readonly RunTrace[]): readonly [number, number] | null {
  let [first, last] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { readings } of traces) {
    first = Math.min(first, readings[0]?.timeS ?? first);
    last = Math.max(last, readings.at(-1)?.timeS ?? last);
  }
  return last > first ? [first, last] : null;
}

/** The whole of all traces, cursor at the first crossing, else in the middle. Null without readings. */
export function wholeWindow(traces: readonly RunTrace[]): ChartWindow | null {
  const span = wholeSpan(traces);
  if (span === null) return null;
  const [fromS, toS] = span;
  const crossingS = traces.find((trace) => trace.crossingS !== null)?.crossingS;
  return { fromS, toS, cursorS: crossingS ?? (fromS + toS) / 2 };
}

/** The cursor moved by so many steps of a sixtieth of the window; the window follows when it leaves it. */
export function moveCursor(
  window: ChartWindow,
  steps: number,
  [first, last]: readonly [number, number],
): ChartWindow {
  const lengthS = window.toS - window.fromS;
  const cursorS = Math.min(last, Math.max(first, window.cursorS + (steps * lengthS) / STEPS));
  const shift = cursorS < window.fromS ? cursorS - window.fromS : Math.max(0, cursorS - window.toS);
  return { fromS: window.fromS + shift, toS: window.toS + shift, cursorS };
}

/** Half or twice the stretch of time, about the cursor; never shorter than 2 s nor longer than the traces. */
export function zoom(
  window: ChartWindow,
  direction: 'in' | 'out',
  [first, last]: readonly [number, number],
): ChartWindow {
  const wantedS = (window.toS - window.fromS) * (direction === 'in' ? 0.5 : 2);
  const lengthS = Math.min(last - first, Math.max(Math.min(SHORTEST_S, last - first), wantedS));
  const share = (window.cursorS - window.fromS) / (window.toS - window.fromS);
  const fromS = Math.min(last - lengthS, Math.max(first, window.cursorS - share * lengthS));
  return { fromS, toS: fromS + lengthS, cursorS: window.cursorS };
}
