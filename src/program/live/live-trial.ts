import { createLineSource } from '../../core/reading/create-line-source.ts';
import type { HostSleep } from '../../core/reading/host-slept-detail.ts';
import { hostSleptDetail } from '../../core/reading/host-slept-detail.ts';
import type { MonotonicClock, ReaderLink } from '../../core/reading/ReaderLink.ts';
import type { OperatorMark } from '../../core/reading/StreamEvent.ts';
import type { RecordingEntry, RecordingHead } from '../../core/recording/RecordingEntry.ts';
import type { RunEvent } from '../../core/run/RunEvent.ts';
import type { RunRules } from '../../core/run/RunResult.ts';
import { createSession } from '../../core/session/create-session.ts';
import type { SessionState } from '../../core/session/Session.ts';
import type { RecordingWriter, Store } from '../../core/store/Store.ts';
import { createReaderDecoder } from '../../core/wire/create-reader-decoder.ts';

export interface LiveTrialOptions {
  readonly store: Store;
  readonly link: ReaderLink;
  readonly clock: MonotonicClock;
  readonly head: RecordingHead;
  readonly rules: RunRules;
  /** Watches for a sleeping host; told to stop at the end. */
  readonly watchSleep?: (onSlept: (sleep: HostSleep) => void) => { check(): void; stop(): void };
  /** Called after what is reported is on disk. */
  readonly onEvents: (events: readonly RunEvent[]) => void;
  readonly onTrouble: (error: unknown) => void;
}

export interface LiveTrial {
  mark(mark: OperatorMark, by: 'key' | 'pedal' | 'command'): void;
  readonly state: SessionState;
  readonly linkState: 'open' | 'lost';
  /** Host time since the latest reading, s; null before the first. */
  readonly readingAgeS: number | null;
  readonly elapsedUs: number;
  commitDelay: RecordingWriter['commitDelay'];
  stop(): Promise<void>;
}

const TELL_EVERY_MS = 100;

/**
 * Joins reader link, store and session: every entry goes to the store first, then through the pipeline; what the
 * pipeline reports is told after the entries that caused it are on disk.
 */
export async function startLiveTrial(options: LiveTrialOptions): Promise<LiveTrial> {
  const { store, link, clock, head, rules, onEvents, onTrouble } = options;
  const statedUnit = head.statedUnit;
  const session = createSession({
    decoder: createReaderDecoder(statedUnit === undefined ? {} : { statedUnit }),
    roles: head.roles,
    rules,
  });
  const writer = store.startRecording(head);
  const startUs = clock.nowUs();
  let untold: RunEvent[] = [];
  let linkState: 'open' | 'lost' = 'open';
  let latestArrivedUs: number | null = null;
  // Live counts: the session keeps them up to date in place.
  const { counts } = session.state;
  let readings = 0;

  const take = (entry: RecordingEntry): void => {
    writer.append(entry);
    keep(session.accept(entry));
    if (counts.readings !== readings) latestArrivedUs = entry.arrivedUs;
    readings = counts.readings;
  };
  const keep = (events: readonly RunEvent[]): void => {
    for (const event of events) {
      untold.push(event);
      if (event.kind === 'run-finished') store.saveRunResult(head.recordingId, event.result);
    }
  };
  const tell = (): void => {
    try {
      writer.flush();
    } catch (error) {
      onTrouble(error);
    }
    const told = untold;
    untold = [];
    onEvents(told);
  };

  const source = createLineSource({ startUs, onEntry: take });
  const sleepWatch = options.watchSleep?.((sleep) =>
    take({
      kind: 'host',
      arrivedUs: clock.nowUs() - startUs,
      event: 'host-slept',
      detail: hostSleptDetail(sleep),
    }),
  );
  await link.open({
    bytes(chunk, arrivedUs) {
      sleepWatch?.check();
      source.bytes(chunk, arrivedUs);
    },
    lost(arrivedUs, cause) {
      linkState = 'lost';
      source.lost(arrivedUs, cause);
    },
    back(arrivedUs) {
      linkState = 'open';
      source.back(arrivedUs);
    },
  });
  const teller = setInterval(tell, TELL_EVERY_MS);

  return {
    mark: (mark, by) => take({ kind: 'mark', arrivedUs: clock.nowUs() - startUs, by, mark }),
    get state() {
      return session.state;
    },
    get linkState() {
      return linkState;
    },
    get readingAgeS() {
      return latestArrivedUs === null ? null : (clock.nowUs() - startUs - latestArrivedUs) / 1e6;
    },
    get elapsedUs() {
      return clock.nowUs() - startUs;
    },
    commitDelay: () => writer.commitDelay(),
    async stop() {
      clearInterval(teller);
      sleepWatch?.stop();
      await link.close();
      source.finish(clock.nowUs());
      keep(session.finish());
      tell();
      writer.close();
    },
  };
}
