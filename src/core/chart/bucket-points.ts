import type { ChartPoint } from './ChartSpec.ts';
import type { Bucket, TraceBuckets } from './TraceBuckets.ts';

/** One channel (0 = first) of a trace as chart points. */
export function bucketPoints(trace: TraceBuckets, channel: number): readonly ChartPoint[] {
  const points: ChartPoint[] = [];
  for (const bucket of trace.closed) addPoint(points, bucket, channel);
  if (trace.open !== null) addPoint(points, trace.open, channel);
  return points;
}

function addPoint(points: ChartPoint[], bucket: Bucket, channel: number): void {
  const of = bucket.channels[channel];
  if (of !== undefined) points.push({ ...of, fromS: bucket.firstS, toS: bucket.latestS });
}
