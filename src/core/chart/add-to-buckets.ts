import type { ReadingValue } from '../reading/StreamEvent.ts';
import type { Bucket, BucketChannel, TraceBuckets } from './TraceBuckets.ts';

const NOTHING: BucketChannel = { lowC: 0, highC: 0, lastC: 0, faulted: false, measured: false };

/**
 * The trace with one reading more (time in s, values channel 1 first). A reading older than the open bucket is
 * left out: time on a trace never runs backwards. Copies the closed buckets only when one closes.
 */
export function addToBuckets(
  trace: TraceBuckets,
  timeS: number,
  values: readonly ReadingValue[],
): TraceBuckets {
  if (!Number.isFinite(timeS)) return trace;
  const index = Math.floor(timeS / trace.bucketS);
  const channels = values.map(ofValue);
  const { open } = trace;
  if (open === null) return { ...trace, open: { index, firstS: timeS, latestS: timeS, channels } };
  if (index < open.index || timeS < open.latestS) return trace;
  if (index === open.index)
    return { ...trace, open: joinBuckets(open, { index, firstS: timeS, latestS: timeS, channels }, index) };
  const fresh: Bucket = { index, firstS: timeS, latestS: timeS, channels };
  const grown: TraceBuckets = { ...trace, closed: [...trace.closed, open], open: fresh };
  return grown.closed.length > trace.mostBuckets ? halve(grown) : grown;
}

function ofValue(value: ReadingValue): BucketChannel {
  if (value.kind === 'temperature' && Number.isFinite(value.temperatureC)) {
    const t = value.temperatureC;
    return { lowC: t, highC: t, lastC: t, faulted: false, measured: true };
  }
  return value.kind === 'missing' ? NOTHING : { ...NOTHING, faulted: true };
}

function joinBuckets(first: Bucket, second: Bucket, index: number): Bucket {
  const count = Math.max(first.channels.length, second.channels.length);
  const channels: BucketChannel[] = [];
  for (let i = 0; i < count; i++) {
    channels.push(joinChannels(first.channels[i] ?? NOTHING, second.channels[i] ?? NOTHING));
  }
  return { index, firstS: first.firstS, latestS: second.latestS, channels };
}

function joinChannels(a: BucketChannel, b: BucketChannel): BucketChannel {
  const faulted = a.faulted || b.faulted;
  if (!b.measured) return { ...a, faulted };
  if (!a.measured) return { ...b, faulted };
  return {
    lowC: Math.min(a.lowC, b.lowC),
    highC: Math.max(a.highC, b.highC),
    lastC: b.lastC,
    faulted,
    measured: true,
  };
}

function halve(trace: TraceBuckets): TraceBuckets {
  const closed: Bucket[] = [];
  for (const bucket of trace.closed) {
    const index = Math.floor(bucket.index / 2);
    const previous = closed.at(-1);
    if (previous?.index === index) closed[closed.length - 1] = joinBuckets(previous, bucket, index);
    else closed.push({ ...bucket, index });
  }
  const bucketS = trace.bucketS * 2;
  if (trace.open === null) return { ...trace, bucketS, closed };
  const open = { ...trace.open, index: Math.floor(trace.open.index / 2) };
  const last = closed.at(-1);
  if (last?.index !== open.index) return { ...trace, bucketS, closed, open };
  return { ...trace, bucketS, closed: closed.slice(0, -1), open: joinBuckets(last, open, open.index) };
}
