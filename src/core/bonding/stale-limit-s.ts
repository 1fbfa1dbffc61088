/** A reader whose rate is not known yet may be slow, s. Judgement, no source. */
const BEFORE_RATE_KNOWN_S = 3;
/** Weight of the newest interval in the running mean. */
const WEIGHT = 0.2;

/**
 * Age at which the latest reading is called stale, s: five of the reader's own intervals, at least 1 s. Above 5 s two and
 * a half intervals are enough: a reader that gives one reading in ten seconds is missed after 25 s, not after 50 s.
 * The ends allow for the computer's own delays; a simulation at ×N makes N s of its own time out of each. Judgement, no source.
 */
export function staleLimitS(intervalS: number | null, speed = 1): number {
  if (intervalS === null) return BEFORE_RATE_KNOWN_S * speed;
  return Math.max(speed, Math.min(5 * intervalS, Math.max(5 * speed, 2.5 * intervalS)));
}

/** Running mean of the reader's interval, s; a silence counts as four intervals at most, so that a gap is not taken for a rate. */
export function nextIntervalS(intervalS: number | null, stepS: number): number | null {
  if (!Number.isFinite(stepS) || stepS <= 0) return intervalS;
  return intervalS === null ? stepS : intervalS + (Math.min(stepS, 4 * intervalS) - intervalS) * WEIGHT;
}
