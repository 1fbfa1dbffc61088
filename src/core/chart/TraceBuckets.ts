/** What one channel did inside one bucket of time. Temperatures in °C. */
export interface BucketChannel {
  readonly lowC: number;
  readonly highC: number;
  readonly lastC: number;
  readonly faulted: boolean;
  /** False when the channel had nothing but faults or missing values: then no temperature is drawn. */
  readonly measured: boolean;
}

export interface Bucket {
  readonly index: number;
  /** Times of its first and latest reading, s. */
  readonly firstS: number;
  readonly latestS: number;
  readonly channels: readonly BucketChannel[];
}

/**
 * A trace of any length in bounded memory: lowest and highest of each channel per stretch of time.
 * When more than `mostBuckets` are closed, pairs are joined and the stretch doubles.
 */
export interface TraceBuckets {
  readonly bucketS: number;
  readonly mostBuckets: number;
  readonly closed: readonly Bucket[];
  readonly open: Bucket | null;
}
