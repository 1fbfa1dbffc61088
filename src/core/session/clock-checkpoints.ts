import type { ClockComparison } from '../reading/StreamEvent.ts';

/** Readings between two looks at the clock comparison: a look costs a robust fit, which is too much for each reading. */
export const READINGS_A_CHECKPOINT = 64;

const UNKNOWN: ClockComparison = Object.freeze({ driftPpm: null, standardUncertaintyPpm: null, overS: 0 });

export interface ClockCheckpoints {
  afterReading(): void;
  atEnd(): void;
  /** As of the latest checkpoint; what a run's result is judged by. */
  readonly latest: ClockComparison;
  readonly all: readonly ClockComparison[];
}

/**
 * The reader's clock against the host's at every 64th reading and at the end of the recording. Live, replayed and
 * analysed from a kept trace alike, a run is judged by the latest of these, so all give the same figures.
 */
export function createClockCheckpoints(clock: () => ClockComparison): ClockCheckpoints {
  const all: ClockComparison[] = [];
  let readings = 0;
  return {
    afterReading() {
      readings += 1;
      if (readings % READINGS_A_CHECKPOINT === 0) all.push(clock());
    },
    atEnd() {
      all.push(clock());
    },
    get latest() {
      return all.at(-1) ?? UNKNOWN;
    },
    all,
  };
}
