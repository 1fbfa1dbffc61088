/** Least silence that counts as a gap, µs. Common practice, no source. */
const LEAST_SILENCE_US = 1_000_000;
/** A gap is longer than this many sample intervals. Common practice, no source. */
const INTERVALS_TO_SILENCE = 3;
const KEPT = 16;
const NEEDED = 3;

export interface IntervalEstimate {
  add(intervalUs: number): void;
  /** Median of the latest 16 intervals, renewed every eighth reading; null before three were seen. */
  readonly intervalUs: number | null;
  /** Longer than this between two readings is silence: max(1 s, 3 intervals); infinite before three were seen. */
  readonly silenceLimitUs: number;
}

/**
 * Learns a reader's sample interval from the readings alone, backwards in time only, so that a live run
 * and its replay learn the same. A median, so that a gap or a bunch of late lines does not move it; gaps
 * are learned too, so that a change of rate is followed within about eight readings.
 */
export function createIntervalEstimate(): IntervalEstimate {
  const ring = new Float64Array(KEPT);
  let seen = 0;
  let intervalUs: number | null = null;
  let silenceLimitUs = Number.POSITIVE_INFINITY;
  return {
    add(newUs) {
      if (!Number.isFinite(newUs) || newUs < 0) return;
      ring[seen % KEPT] = newUs;
      seen += 1;
      const due = newUs > silenceLimitUs || seen % 8 === 0 || (seen >= NEEDED && seen < 8);
      if (!due || seen < NEEDED) return;
      const sorted = ring.slice(0, Math.min(seen, KEPT)).sort();
      intervalUs = sorted[sorted.length >> 1] as number;
      silenceLimitUs = Math.max(LEAST_SILENCE_US, INTERVALS_TO_SILENCE * intervalUs);
    },
    get intervalUs() {
      return intervalUs;
    },
    get silenceLimitUs() {
      return silenceLimitUs;
    },
  };
}
