import type { MonotonicClock } from '../../core/reading/ReaderLink.ts';

/**
 * A clock that runs `speed` times as fast as another, from 0 at its making. Everything of a simulated trial is
 * stamped with it, so that a recording made at ×20 looks like one made in real time.
 */
export function createScaledClock(clock: MonotonicClock, speed: number): MonotonicClock {
  const startUs = clock.nowUs();
  return { nowUs: () => Math.round((clock.nowUs() - startUs) * speed) };
}
