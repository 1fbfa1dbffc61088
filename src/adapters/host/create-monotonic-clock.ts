import type { MonotonicClock } from '../../core/reading/ReaderLink.ts';

/**
 * The host's monotonic clock, whole microseconds from its making. It never steps with the wall clock; on
 * Linux and macOS it stands still while the host sleeps.
 */
export function createMonotonicClock(): MonotonicClock {
  const startNs = process.hrtime.bigint();
  return { nowUs: () => Number((process.hrtime.bigint() - startNs) / 1000n) };
}
