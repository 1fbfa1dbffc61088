import { uptime } from 'node:os';
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

export interface SleepWatchOptions {
  readonly clock: MonotonicClock;
  /** Wall time, ms. */
  readonly wallClock?: () => number;
  /** Seconds since the system's start, sleep counted; null where there is none that nobody can set. */
  readonly uptimeS?: (() => number) | null;
  readonly onSlept: (sleep: HostSleep) => void;
}

/**
 * Notices that the host slept (lid closed, suspended, or the program stopped). Two signs: a look that comes late by
 * the monotonic clock (it counts sleep on Windows, and a stopped program everywhere), and a wall clock that went
 * on while the monotonic clock stood still (Linux, macOS). A wall clock set forward looks like the latter: on Linux the
 * system's up time, which counts sleep and cannot be set, tells them apart; elsewhere it is told as a sleep,
 * which costs a gap and never bridges one. A wall clock set back is nothing.
 */
export function createSleepWatch(options: SleepWatchOptions): SleepWatch {
  const { clock, wallClock = Date.now, onSlept } = options;
  const { uptimeS = process.platform === 'linux' ? uptime : null } = options;
  const uncountedByUptimeS = (): number => (uptimeS === null ? 0 : uptimeS() - clock.nowUs() / 1e6);
  let countedUs = clock.nowUs();
  let wallMs = wallClock();
  let knownS = uncountedByUptimeS();

  const stoodStillS = (byWallS: number): number => {
    if (byWallS <= LEAST_SLEEP_S) return 0;
    if (uptimeS === null) return byWallS;
    const nowS = uncountedByUptimeS();
    const sinceS = nowS - knownS;
    knownS = nowS;
    return sinceS > LEAST_SLEEP_S / 2 ? sinceS : 0;
  };

  const check = (): void => {
    const nowUs = clock.nowUs();
    const nowMs = wallClock();
    const countedS = (nowUs - countedUs) / 1e6;
    const uncountedS = stoodStillS((nowMs - wallMs) / 1e3 - countedS);
    countedUs = nowUs;
    wallMs = nowMs;
    if (uncountedS === 0 && countedS <= LEAST_SLEEP_S) return;
    onSlept({ sleptS: countedS + uncountedS, uncountedS });
  };
  const timer = setInterval(check, LOOK_EVERY_MS);
  timer.unref();
  return { check, stop: () => clearInterval(timer) };
}
