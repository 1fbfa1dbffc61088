import { headProbes } from '../../core/probe/head-probes.ts';
import { probeCorrection } from '../../core/probe/probe-correction.ts';
import { createLineSource } from '../../core/reading/create-line-source.ts';
import { type HostSleep, hostSleptDetail } from '../../core/reading/host-slept-detail.ts';
import type { MonotonicClock, ReaderLink } from '../../core/reading/ReaderLink.ts';
import type { OperatorMark } from '../../core/reading/StreamEvent.ts';
import type { RecordingEntry, RecordingHead } from '../../core/recording/RecordingEntry.ts';
import type { RunEvent } from '../../core/run/RunEvent.ts';
import type { RunRules } from '../../core/run/RunResult.ts';
import type { TrialScreenEvent } from '../../core/screen/TrialScreenEvent.ts';
import { createSession } from '../../core/session/create-session.ts';
import type { SessionState } from '../../core/session/Session.ts';
import type { RecordingWriter, Store } from '../../core/store/Store.ts';
import { readerRefusedText } from '../../core/text/reader-refused-text.ts';
import { createReaderDecoder } from '../../core/wire/create-reader-decoder.ts';
import { isProtocolLine } from '../../core/wire/protocol/is-protocol-line.ts';

export interface LiveTrialOptions {
  readonly store: Store;
  readonly link: ReaderLink;
  /** The link's clock; stamps marks too. */
  readonly clock: MonotonicClock;
  readonly head: RecordingHead;
  /** Called once the reader is open, before its recording begins: a trial whose port is busy leaves nothing behind. */
  readonly begin?: () => void;
  readonly rules: RunRules;
  /** Of the link's clock against the host's; only a simulation runs faster. */
  readonly speed?: number;
  /** Starts watching for a sleeping host. */
  readonly watchSleep: (onSlept: (sleep: HostSleep) => void) => { check(): void; stop(): void };
  /** Hears what happened, after it is on disk. */
  readonly tell: (event: TrialScreenEvent) => void;
  /** Hears after each commit whether it went well (null) or why not; what waits is kept and tried again. */
  readonly onCommit: (trouble: unknown) => void;
}

export interface LiveTrial {
  /** `atUs`: the moment of the key on the link's clock. */
  mark(mark: OperatorMark, by: 'key' | 'pedal' | 'command', atUs?: number): void;
  readonly state: SessionState;
  readonly commitDelay: RecordingWriter['commitDelay'];
  /** Finishes the run under way, closes link and recording. */
  stop(): Promise<void>;
}

/** Longest time from arrival to disk and screen, ms of the link's clock. */
const TELL_EVERY_MS = 100;

/**
 * Joins reader link, store and session: every entry goes to the store first, then through the pipeline; what the
 * pipeline reports is told after the entries that caused it are on disk.
 */
export async function startLiveTrial(options: LiveTrialOptions): Promise<LiveTrial> {
  const { store, link, clock, head, rules, tell, onCommit } = options;
  const session = createSession({
    decoder: createReaderDecoder(head.statedUnit === undefined ? {} : { statedUnit: head.statedUnit }),
    roles: head.roles,
    rules,
    probeCorrections: headProbes(head).map((probe) => (probe === null ? null : probeCorrection(probe))),
  });
  let writer: ReturnType<Store['startRecording']> | null = null;
  const startUs = clock.nowUs();
  const untold: TrialScreenEvent[] = [];
  /** What came before the recording had begun. */
  const early: RecordingEntry[] = [];
  const { counts } = session.state;
  let readings = 0;

  const keep = (events: readonly RunEvent[], atUs: number): void => {
    for (const event of events) {
      if (event.kind === 'run-finished') store.saveRunResult(head.recordingId, event.result);
    }
    if (events.length === 0 && counts.readings === readings) return;
    readings = counts.readings;
    untold.push({ kind: 'session', state: session.state, events, atUs });
  };
  const take = (entry: RecordingEntry): void => {
    if (writer === null) {
      early.push(entry);
      return;
    }
    writer.append(entry);
    if (entry.kind === 'line' && entry.text.startsWith('error ') && isProtocolLine(entry.text)) {
      untold.push({
        kind: 'notice',
        text: readerRefusedText(entry.text),
        tone: 'caution',
        atUs: entry.arrivedUs + startUs,
      });
    }
    keep(session.accept(entry), entry.arrivedUs + startUs);
  };
  const tellAll = (): void => {
    try {
      writer?.flush();
      onCommit(null);
    } catch (error) {
      onCommit(error);
    }
    for (const event of untold.splice(0)) tell(event);
    tell({ kind: 'session', state: session.state, events: [], atUs: clock.nowUs() });
  };

  const source = createLineSource({ startUs, onEntry: take });
  const sleepWatch = options.watchSleep((sleep) =>
    take({
      kind: 'host',
      arrivedUs: clock.nowUs() - startUs,
      event: 'host-slept',
      detail: hostSleptDetail(sleep),
    }),
  );
  const opened = link.open({
    bytes(chunk, arrivedUs) {
      sleepWatch.check();
      source.bytes(chunk, arrivedUs);
    },
    lost(arrivedUs, cause) {
      source.lost(arrivedUs, cause);
      untold.push({ kind: 'link', link: { kind: 'lost', sinceUs: arrivedUs, cause }, atUs: arrivedUs });
    },
    back(arrivedUs) {
      source.back(arrivedUs);
      untold.push({ kind: 'link', link: { kind: 'open' }, atUs: arrivedUs });
    },
  });
  try {
    await opened;
  } catch (error) {
    sleepWatch.stop();
    throw error;
  }
  options.begin?.();
  const recording = store.startRecording(head);
  writer = recording;
  for (const entry of early.splice(0)) take(entry);
  tell({ kind: 'link', link: { kind: 'open' }, atUs: clock.nowUs() });
  const teller = setInterval(tellAll, Math.max(5, TELL_EVERY_MS / (options.speed ?? 1)));

  return {
    mark: (mark, by, atUs = clock.nowUs()) =>
      take({ kind: 'mark', arrivedUs: Math.max(0, atUs - startUs), by, mark }),
    get state() {
      return session.state;
    },
    commitDelay: () => recording.commitDelay(),
    async stop() {
      clearInterval(teller);
      sleepWatch.stop();
      await link.close();
      source.finish(clock.nowUs());
      keep(session.finish(), clock.nowUs());
      tellAll();
      recording.close();
    },
  };
}
