import type { MonotonicClock } from '../../core/reading/ReaderLink.ts';

export interface PacedClock extends MonotonicClock {
  /** From now on so many times as fast; 0 stands still. */
  setSpeed(speed: number): void;
}

/** A clock that goes on from `fromUs` at a speed that may change: it never jumps and never runs backwards. */
export function createPacedClock(clock: MonotonicClock, fromUs: number, speed: number): PacedClock {
  let baseUs = fromUs;
  let sinceUs = clock.nowUs();
  let now = speed;
  const nowUs = () => baseUs + Math.round((clock.nowUs() - sinceUs) * now);
  return {
    nowUs,
    setSpeed(next) {
      baseUs = nowUs();
      sinceUs = clock.nowUs();
      now = next;
    },
  };
}
