import type { DotCanvas } from './braille-canvas.ts';
import type { ChartSpec, ChartTrace } from './ChartSpec.ts';

interface Span {
  low: number;
  high: number;
  last: number;
  toS: number;
  fromS: number;
}

/**
 * Draws one trace: lowest to highest per dot column, joined to the column before unless the silence between
 * them is longer than `longestBridgedS` or a fault lies between. Returns the dot row of its end, null if none.
 */
export function drawTrace(
  canvas: DotCanvas,
  spec: ChartSpec,
  trace: ChartTrace,
  owner: number,
): number | null {
  const xOf = (timeS: number) =>
    Math.floor(((timeS - spec.fromS) / (spec.toS - spec.fromS)) * (canvas.across - 1) + 0.5);
  const yOf = (c: number) =>
    Math.floor((1 - (c - spec.lowC) / (spec.highC - spec.lowC)) * (canvas.down - 1) + 0.5);
  const spans = spansPerColumn(spec, trace, xOf);
  let end: number | null = null;
  let before: { x: number; span: Span } | null = null;
  for (const [x, span] of spans) {
    if (span === null) {
      before = null;
      continue;
    }
    let [top, bottom] = [yOf(span.high), yOf(span.low)];
    if (before !== null && span.fromS - before.span.toS <= spec.longestBridgedS) {
      const from = yOf(before.span.last);
      if (x - before.x <= 1) {
        top = Math.min(top, from < top ? from + 1 : top);
        bottom = Math.max(bottom, from > bottom ? from - 1 : bottom);
      } else {
        const to = (top + bottom) / 2;
        for (let between = before.x + 1; between < x; between++) {
          const y = Math.round(from + ((to - from) * (between - before.x)) / (x - before.x));
          if (shown(trace, between, canvas.columns === canvas.across)) canvas.set(between, y, owner);
        }
      }
    }
    if (shown(trace, x, canvas.columns === canvas.across)) {
      for (let y = Math.max(0, top); y <= Math.min(canvas.down - 1, bottom); y++) canvas.set(x, y, owner);
    }
    end = yOf(span.last);
    before = { x, span };
  }
  return end;
}

function shown(trace: ChartTrace, x: number, ascii: boolean): boolean {
  if (ascii || trace.line === 'solid') return true;
  return trace.line === 'dashed' ? x % 6 < 4 : x % 4 === 0;
}

/** Decimation: all points of a dot column become one span; a column with only faults breaks the line (null). */
function spansPerColumn(
  spec: ChartSpec,
  trace: ChartTrace,
  xOf: (timeS: number) => number,
): Map<number, Span | null> {
  const spans = new Map<number, Span | null>();
  for (const point of trace.points) {
    if (point.toS < spec.fromS || point.fromS > spec.toS) continue;
    const x = xOf(Math.min(point.toS, spec.toS));
    const known = spans.get(x);
    if (!point.measured) {
      if (point.faulted && known === undefined) spans.set(x, null);
      continue;
    }
    if (known === undefined || known === null) {
      spans.set(x, {
        low: point.lowC,
        high: point.highC,
        last: point.lastC,
        fromS: point.fromS,
        toS: point.toS,
      });
    } else {
      known.low = Math.min(known.low, point.lowC);
      known.high = Math.max(known.high, point.highC);
      known.last = point.lastC;
      known.toS = point.toS;
    }
  }
  return spans;
}
