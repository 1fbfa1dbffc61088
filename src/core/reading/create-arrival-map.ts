const BUCKET_US = 250_000;
const BUCKETS = 16;

export interface ArrivalMap {
  /** A reading that happened at `timeUs` of the recording arrived at `arrivedUs`. */
  add(timeUs: number, arrivedUs: number): void;
  /** Time of the recording at which something happened that the host saw at `arrivedUs`. */
  timeAtUs(arrivedUs: number): number;
}

/**
 * Brings what the host saw (keys, pedal) to the readings' time: time = arrived − smallest delay.
 * A line arrives late by its transfer and by the host's own delays, never early; so the smallest
 * (arrived − time) of the latest 4 s is the best estimate of the two clocks' difference that is known
 * at that moment (nothing later is used, so a replay maps the same). Left over: the least transfer time
 * (about 1 ms over USB) and clock drift over 4 s (0.4 ms at 100 ppm). Never earlier than the latest reading.
 * O(1) per reading: minima of quarter-second buckets in a ring.
 */
export function createArrivalMap(): ArrivalMap {
  const minimaUs = new Float64Array(BUCKETS).fill(Number.POSITIVE_INFINITY);
  let bucket = 0;
  let smallestUs = Number.POSITIVE_INFINITY;
  return {
    add(timeUs, arrivedUs) {
      const delayUs = arrivedUs - timeUs;
      const now = Math.floor(timeUs / BUCKET_US);
      if (now !== bucket) {
        const steps = Math.min(Math.max(now - bucket, 0), BUCKETS);
        for (let step = 0; step < steps; step += 1)
          minimaUs[(((now - step) % BUCKETS) + BUCKETS) % BUCKETS] = Number.POSITIVE_INFINITY;
        bucket = Math.max(now, bucket);
        smallestUs = Number.POSITIVE_INFINITY;
        for (const minimumUs of minimaUs) if (minimumUs < smallestUs) smallestUs = minimumUs;
      }
      const place = ((bucket % BUCKETS) + BUCKETS) % BUCKETS;
      if (delayUs < (minimaUs[place] as number)) minimaUs[place] = delayUs;
      if (delayUs < smallestUs) smallestUs = delayUs;
    },
    timeAtUs(arrivedUs) {
      return smallestUs === Number.POSITIVE_INFINITY ? 0 : arrivedUs - smallestUs;
    },
  };
}
