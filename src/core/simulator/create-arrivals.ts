import { hostSleptDetail } from '../reading/host-slept-detail.ts';
import type { RecordingEntry } from '../recording/RecordingEntry.ts';
import { createRandom } from './create-random.ts';
import type { SentLine } from './create-wire-troubles.ts';
import type { TimedMark } from './operator-marks.ts';
import type { Scenario } from './Scenario.ts';

/** USB: polled about every millisecond, the host's own delays on top. */
const LEAST_DELAY_S = 0.0004;
const MEAN_EXTRA_DELAY_S = 0.0007;
const LONGEST_DELAY_S = 0.006;
/** The port is opened this long before the simulation's zero. */
const OPENED_BEFORE_S = 0.05;

/** Delay of one line from the reader to the host's clock, s: never early, now and then some milliseconds late. */
export function createDelay(seed: number): () => number {
  const random = createRandom(seed ^ 0x5bd1e995);
  return () => Math.min(LONGEST_DELAY_S, LEAST_DELAY_S - MEAN_EXTRA_DELAY_S * Math.log(1 - random.uniform()));
}

/** Gives lines, keys and host events the host's arrival times and puts them in the order of arrival. */
export function createArrivals(scenario: Scenario) {
  const delayS = createDelay(scenario.seed);

  /** The host's monotonic clock does not count the time it slept. */
  function hostUs(timeS: number): number {
    let awayS = 0;
    for (const trouble of scenario.wireTroubles) {
      if (trouble.kind === 'host-asleep') {
        awayS += Math.min(Math.max(0, timeS - trouble.fromS), trouble.toS - trouble.fromS);
      }
    }
    return Math.max(0, Math.round((timeS - awayS + OPENED_BEFORE_S) * 1e6));
  }

  function entryOf(sent: SentLine, arrivedUs: number): RecordingEntry {
    if (sent.kind === 'line') {
      return { kind: 'line', arrivedUs, text: sent.text, wholeness: sent.wholeness };
    }
    const detail =
      sent.event === 'host-slept' ? hostSleptDetail({ sleptS: sent.sleptS, uncountedS: sent.sleptS }) : '';
    return { kind: 'host', arrivedUs, event: sent.event, detail };
  }

  return {
    entriesOf(sent: readonly SentLine[], marks: readonly TimedMark[]): readonly RecordingEntry[] {
      let latestUs = 0;
      const entries: RecordingEntry[] = sent.map((item) => {
        latestUs = Math.max(latestUs, hostUs(item.sentS + delayS()));
        return entryOf(item, latestUs);
      });
      for (const { timeS, mark } of marks) {
        entries.push({ kind: 'mark', arrivedUs: hostUs(timeS), by: 'key', mark });
      }
      return entries.sort((a, b) => a.arrivedUs - b.arrivedUs);
    },
  };
}
