import type { HostSleep } from '../../core/reading/host-slept-detail.ts';
import type { MonotonicClock } from '../../core/reading/ReaderLink.ts';

const LOOK_EVERY_MS = 500;
/** Two clocks further apart than this, or a look later than this, is a sleep. Common practice, no source. */
const LEAST_SLEEP_S = 3;

export interface SleepWatch {
  /** Looks now; to be called before bytes are taken, so that a sleep is told before what came after it. */
  check(): void;
  stop(): void;
}

/**
 * Notices that the host slept (lid closed, suspended, or the program stopped). Two signs: a look that comes late by
 * the monotonic clock (it counts sleep on Windows, and a stopped program everywhere), and a wall clock that went
 * on while the monotonic clock stood still (Linux, macOS). A wall clock set forward looks the same as the latter; it is
 * told as a sleep too, which costs a gap and never bridges one. Set back: nothing.
 */
export function createSleepWatch(options: {
  readonly clock: MonotonicClock;
  /** Wall time, ms. */
  readonly wallClock?: () => number;
  readonly onSlept: (sleep: HostSleep) => void;
}): SleepWatch {
  const { clock, wallClock = Date.now, onSlept } = options;
  let countedUs = clock.nowUs();
  let wallMs = wallClock();
  const look = (): void => {
    const nowUs = clock.nowUs();
    const nowMs = wallClock();
    const countedS = (nowUs - countedUs) / 1e6;
    const uncountedS = (nowMs - wallMs) / 1e3 - countedS;
    countedUs = nowUs;
    wallMs = nowMs;
    const stoodStill = uncountedS > LEAST_SLEEP_S;
    const late = countedS > LEAST_SLEEP_S + LOOK_EVERY_MS / 1e3;
    if (!stoodStill && !late) return;
    onSlept({
      sleptS: countedS + Math.max(0, stoodStill ? uncountedS : 0),
      uncountedS: stoodStill ? uncountedS : 0,
    });
  };
  const timer = setInterval(look, LOOK_EVERY_MS);
  timer.unref();
  return {
    check: look,
    stop: () => clearInterval(timer),
  };
}
