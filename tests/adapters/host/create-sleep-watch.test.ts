import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createMonotonicClock } from '../../../src/adapters/host/create-monotonic-clock.ts';
import { createSleepWatch } from '../../../src/adapters/host/create-sleep-watch.ts';
import {
  type HostSleep,
  hostSleptDetail,
  readHostSleptDetail,
} from '../../../src/core/reading/host-slept-detail.ts';

describe('createSleepWatch', () => {
  let nowUs: number;
  let wallMs: number;
  let sleeps: HostSleep[];
  const pass = (monotonicS: number, wallS = monotonicS): void => {
    nowUs += monotonicS * 1e6;
    wallMs += wallS * 1e3;
    vi.advanceTimersByTime(500);
  };
  let stop: () => void;
  beforeEach(() => {
    vi.useFakeTimers();
    nowUs = 5e6;
    wallMs = 1e12;
    sleeps = [];
    const watch = createSleepWatch({
      clock: { nowUs: () => nowUs },
      wallClock: () => wallMs,
      uptimeS: null,
      onSlept: (sleep) => sleeps.push(sleep),
    });
    stop = watch.stop;
  });
  afterEach(() => {
    stop();
    vi.useRealTimers();
  });

  it('tells nothing while looks come in time, and at a late one of 2 s', () => {
    pass(0.5);
    pass(2);
    expect(sleeps).toEqual([]);
  });

  it('tells a sleep of 60 s that the monotonic clock did not count', () => {
    pass(0.5, 60.5);
    pass(0.5);
    expect(sleeps).toEqual([{ sleptS: expect.closeTo(60.5, 9), uncountedS: expect.closeTo(60, 9) }]);
  });

  it('tells a sleep of 60 s that the monotonic clock counted', () => {
    pass(60.5);
    expect(sleeps).toEqual([{ sleptS: expect.closeTo(60.5, 9), uncountedS: 0 }]);
  });

  it('tells nothing when the wall clock is set back an hour', () => {
    pass(0.5, -3600);
    expect(sleeps).toEqual([]);
  });

  it('tells a sleep from a wall clock set forward an hour, where the system counts its up time', () => {
    let uptimeS = 100;
    const told: HostSleep[] = [];
    const watch = createSleepWatch({
      clock: { nowUs: () => nowUs },
      wallClock: () => wallMs,
      uptimeS: () => uptimeS,
      onSlept: (sleep) => told.push(sleep),
    });
    uptimeS += 0.5;
    pass(0.5, 3600.5);
    expect(told).toEqual([]);
    uptimeS += 60.5;
    pass(0.5, 60.5);
    expect(told).toEqual([{ sleptS: expect.closeTo(60.5, 6), uncountedS: expect.closeTo(60, 6) }]);
    watch.stop();
  });

  it('writes a detail that the assembler reads back to the millisecond', () => {
    const sleep = { sleptS: 12.4, uncountedS: 12.35 };
    expect(readHostSleptDetail(hostSleptDetail(sleep))).toEqual(sleep);
    expect(readHostSleptDetail('words')).toEqual({ sleptS: 0, uncountedS: 0 });
  });
});

describe('createMonotonicClock', () => {
  it('counts whole microseconds and never runs backwards', () => {
    const clock = createMonotonicClock();
    let before = clock.nowUs();
    for (let i = 0; i < 10_000; i += 1) {
      const now = clock.nowUs();
      expect(Number.isInteger(now) && now >= before).toBe(true);
      before = now;
    }
  });
});
