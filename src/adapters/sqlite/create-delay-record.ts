/** Keeps the latest delays and tells how long the slowest of a hundred took. */
export interface DelayRecord {
  add(delayMs: number): void;
  read(): { readonly commits: number; readonly p99Ms: number; readonly worstMs: number };
}

/** Number of commits looked back on; the count and the worst are over all. */
const KEPT = 1_000;

/** 99th percentile by nearest rank over the latest 1,000 commits; all zero before the first. */
export function createDelayRecord(): DelayRecord {
  const latest: number[] = [];
  let commits = 0;
  let worstMs = 0;
  return {
    add(delayMs) {
      latest[commits % KEPT] = delayMs;
      commits += 1;
      worstMs = Math.max(worstMs, delayMs);
    },
    read() {
      const ascending = latest.toSorted((a, b) => a - b);
      return { commits, p99Ms: ascending[Math.ceil(ascending.length * 0.99) - 1] ?? 0, worstMs };
    },
  };
}
