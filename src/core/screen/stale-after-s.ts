/**
 * Age at which the latest reading is called stale, s: five intervals, at least 1 s and at most 5 s. Common practice. The
 * two ends allow for the computer's own delays: a simulation or replay at ×N makes N s of its own time out of each.
 */
export function staleAfterS(intervalS: number | null, speed = 1): number {
  return Math.min(5 * speed, Math.max(speed, 5 * (intervalS ?? 0.2)));
}
