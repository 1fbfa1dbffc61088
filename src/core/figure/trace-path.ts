import { line } from 'd3-shape';
import type { PlotFrame } from './plot-frame.ts';
import type { TracePoint } from './RunTrace.ts';
import { thinPoints } from './thin-points.ts';

/** Path of a trace on a plot: broken where a reading is missing; no more points than the plot can show. */
export function tracePath(
  points: readonly TracePoint[],
  frame: PlotFrame,
  range: { readonly fromS: number; readonly toS: number },
): string {
  const within = points.filter(({ timeS }, index) => {
    const before = points[index + 1]?.timeS ?? timeS;
    const after = points[index - 1]?.timeS ?? timeS;
    return before >= range.fromS && after <= range.toS;
  });
  const unitsPerS = frame.x(1) - frame.x(0);
  const draw = line<TracePoint>()
    .defined(({ temperatureC }) => temperatureC !== null)
    .x(({ timeS }) => frame.x(timeS))
    .y(({ temperatureC }) => frame.y(temperatureC as number))
    .digits(1);
  return draw([...thinPoints(within, 1 / unitsPerS)]) ?? '';
}
