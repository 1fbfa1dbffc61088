import type { ChartMark, ChartPoint, ChartSpec, ChartTrace } from '../chart/ChartSpec.ts';
import { shownTemperature, shownToC } from '../chart/show-temperature.ts';
import { bondLineChannels } from '../screen/bond-line-channels.ts';
import { channelStyle } from '../screen/channel-style.ts';
import { RECORDS_TEXT } from '../text/records-text.ts';
import { MARK_LABEL } from '../text/screen-text.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import type { ChartWindow, RunTrace } from './RecordsState.ts';

const BRIDGED_S = 2.5;
/** Roles that tell runs of an overlay apart; their line styles and figures differ too. */
const OVERLAY_ROLES = [
  'bond-line',
  'upper-platen',
  'lower-platen',
  'bond-line-outer',
  'bond-line-inner',
  'mark',
] as const;
const OVERLAY_LINE = ['solid', 'dashed', 'dotted'] as const;

export interface RecordChartOptions {
  readonly unit: TemperatureUnit;
  readonly ascii: boolean;
}

/** One run with all its channels, or several with their bond line, all counted from press closed. */
export function recordChart(
  traces: readonly RunTrace[],
  window: ChartWindow,
  { unit, ascii }: RecordChartOptions,
): Omit<ChartSpec, 'columns' | 'rows'> {
  const lines = traces.length === 1 ? channelsOf(traces[0]!, window) : overlayOf(traces, window);
  const targetC = traces[0]?.targetC ?? null;
  const [lowC, highC] = span(lines, targetC, unit);
  return {
    fromS: window.fromS,
    toS: window.toS,
    zeroS: 0,
    lowC,
    highC,
    unit,
    ascii,
    targetC,
    traces: lines,
    marks: [...marksOf(traces), { timeS: window.cursorS, label: RECORDS_TEXT.cursorLabel }],
    band: traces.length === 1 ? (traces[0]?.band ?? []) : [],
    longestBridgedS: BRIDGED_S,
  };
}

function marksOf(traces: readonly RunTrace[]): readonly ChartMark[] {
  const [only] = traces;
  if (only === undefined) return [];
  const marks: ChartMark[] = only.closedKnown ? [{ timeS: 0, label: MARK_LABEL.closed }] : [];
  if (traces.length > 1) return marks;
  if (only.crossingS !== null) marks.push({ timeS: only.crossingS, label: MARK_LABEL.crossing });
  if (only.openedS !== null) marks.push({ timeS: only.openedS, label: MARK_LABEL.opened });
  return marks;
}

function channelsOf(trace: RunTrace, window: ChartWindow): readonly ChartTrace[] {
  return trace.roles.flatMap((role, channel) =>
    role === 'unused' ? [] : [{ ...channelStyle(role), points: pointsOf(trace, channel, window) }],
  );
}

function overlayOf(traces: readonly RunTrace[], window: ChartWindow): readonly ChartTrace[] {
  return traces.map((trace, i) => ({
    letter: runSign(trace.run),
    role: overlayRole(i),
    line: OVERLAY_LINE[i % OVERLAY_LINE.length] ?? 'solid',
    points: pointsOf(trace, bondLineChannels(trace.roles)[0] ?? 0, window),
  }));
}

/** How the nth run of an overlay is drawn and named. */
export function overlayRole(place: number): (typeof OVERLAY_ROLES)[number] {
  return OVERLAY_ROLES[place % OVERLAY_ROLES.length] ?? 'mark';
}

/** 1 to 9, then letters: one character per run. */
export function runSign(run: number): string {
  return run < 9 ? `${run + 1}` : String.fromCharCode(97 + ((run - 9) % 26));
}

function pointsOf(trace: RunTrace, channel: number, window: ChartWindow): readonly ChartPoint[] {
  const points: ChartPoint[] = [];
  for (const { timeS, values } of trace.readings) {
    if (timeS < window.fromS - BRIDGED_S || timeS > window.toS + BRIDGED_S) continue;
    const value = values[channel];
    const t = value?.kind === 'temperature' ? value.temperatureC : null;
    points.push({
      fromS: timeS,
      toS: timeS,
      lowC: t ?? 0,
      highC: t ?? 0,
      lastC: t ?? 0,
      measured: t !== null,
      faulted: value?.kind === 'fault',
    });
  }
  return points;
}

/** Lowest to highest inside the window, to steps that leave at least ten of the unit round the traces. */
function span(
  lines: readonly ChartTrace[],
  targetC: number | null,
  unit: TemperatureUnit,
): readonly [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { points } of lines) {
    for (const point of points) {
      if (!point.measured) continue;
      low = Math.min(low, point.lowC);
      high = Math.max(high, point.highC);
    }
  }
  if (!(high >= low)) [low, high] = [(targetC ?? 100) - 20, (targetC ?? 100) + 20];
  const [lowShown, highShown] = [shownTemperature(low, unit), shownTemperature(high, unit)];
  const step = highShown - lowShown > 100 ? 50 : 10;
  return [
    shownToC(Math.floor((lowShown - 1) / step) * step, unit),
    shownToC(Math.ceil((highShown + 1) / step) * step, unit),
  ];
}
