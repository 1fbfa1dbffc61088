import type { TracePoint } from './RunTrace.ts';

/**
 * Fewer points with the same look: of each stretch of `stepS` seconds the first, lowest, highest and last reading
 * stay, and every missing one, so that no peak, dip or gap is lost.
 */
export function thinPoints(points: readonly TracePoint[], stepS: number): readonly TracePoint[] {
  if (!(stepS > 0)) return points;
  const kept: TracePoint[] = [];
  let from = 0;
  while (from < points.length) {
    const stretch = Math.floor((points[from] as TracePoint).timeS / stepS);
    let to = from;
    while (to < points.length && Math.floor((points[to] as TracePoint).timeS / stepS) === stretch) to++;
    kept.push(...extremes(points.slice(from, to)));
    from = to;
  }
  return kept;
}

function extremes(points: readonly TracePoint[]): readonly TracePoint[] {
  if (points.length <= 4) return points;
  let low = -1;
  let high = -1;
  points.forEach(({ temperatureC }, index) => {
    if (temperatureC === null) return;
    if (low < 0 || temperatureC < (points[low]?.temperatureC as number)) low = index;
    if (high < 0 || temperatureC > (points[high]?.temperatureC as number)) high = index;
  });
  return points.filter(
    ({ temperatureC }, index) =>
      temperatureC === null || index === 0 || index === points.length - 1 || index === low || index === high,
  );
}
