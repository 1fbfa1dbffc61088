import type { ChartPoint } from './ChartSpec.ts';
import type { Bucket, TraceBuckets } from './TraceBuckets.ts';

/** Points of buckets seen before: a closed bucket never changes, and a screen asks for all of them at every draw. */
const known = new WeakMap<Bucket, readonly ChartPoint[]>();

/** One channel (0 = first) of a trace as chart points. */
export function bucketPoints(trace: TraceBuckets, channel: number): readonly ChartPoint[] {
  const points: ChartPoint[] = [];
  for (const bucket of trace.closed) addPoint(points, bucket, channel);
  if (trace.open !== null) addPoint(points, trace.open, channel);
  return points;
}

function addPoint(points: ChartPoint[], bucket: Bucket, channel: number): void {
  const point = pointsOf(bucket)[channel];
  if (point !== undefined) points.push(point);
}

function pointsOf(bucket: Bucket): readonly ChartPoint[] {
  const before = known.get(bucket);
  if (before !== undefined) return before;
  const points = bucket.channels.map(({ lowC, highC, lastC, measured, faulted }) => ({
    fromS: bucket.firstS,
    toS: bucket.latestS,
    lowC,
    highC,
    lastC,
    measured,
    faulted,
  }));
  known.set(bucket, points);
  return points;
}
