/** How long the host slept, and how much of it its monotonic clock did not count (all of it on Linux and macOS). */
export interface HostSleep {
  readonly sleptS: number;
  readonly uncountedS: number;
}

const PATTERN = /^(\d+(?:\.\d+)?) s(?:, clock stood still (\d+(?:\.\d+)?) s)?/;

/** Detail of a 'host-slept' entry, for example `12.400 s, clock stood still 12.350 s`. */
export function hostSleptDetail(sleep: HostSleep): string {
  return `${sleep.sleptS.toFixed(3)} s, clock stood still ${sleep.uncountedS.toFixed(3)} s`;
}

/** Reads such a detail; a text of another form says nothing about the clock: 0 s. */
export function readHostSleptDetail(detail: string): HostSleep {
  const found = PATTERN.exec(detail);
  return { sleptS: Number(found?.[1] ?? 0), uncountedS: Number(found?.[2] ?? 0) };
}
