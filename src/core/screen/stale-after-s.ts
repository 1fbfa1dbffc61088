/** Age at which the latest reading is called stale: five intervals, at least 1 s and at most 5 s. Common practice. */
export function staleAfterS(intervalS: number | null): number {
  return Math.min(5, Math.max(1, 5 * (intervalS ?? 0.2)));
}
