import type { TraceBuckets } from './TraceBuckets.ts';

/** An empty trace. Default: quarter seconds, at most 600 of them (150 s) before they double. */
export function startBuckets(bucketS = 0.25, mostBuckets = 600): TraceBuckets {
  return { bucketS, mostBuckets, closed: [], open: null };
}
