import { createReadingAssembler } from '../reading/create-reading-assembler.ts';
import type { Reading, StreamEvent } from '../reading/StreamEvent.ts';
import type { RecordingEntry } from '../recording/RecordingEntry.ts';
import { createRunTracker } from '../run/create-run-tracker.ts';
import type { RunEvent } from '../run/RunEvent.ts';
import type { RunResult } from '../run/RunResult.ts';
import { correctedReading } from './corrected-reading.ts';
import type { Session, SessionConfig } from './Session.ts';
import { withClock } from './with-clock.ts';

const NOTHING: readonly RunEvent[] = Object.freeze([]);

/**
 * Joins decoder, reading assembler and run tracker into the one pipeline from entries to runs.
 * Pure apart from its own state: the same entries give the same events, live or replayed.
 */
export function createSession(config: SessionConfig): Session {
  const assembler = createReadingAssembler({ decoder: config.decoder });
  const tracker = createRunTracker({ rules: config.rules, roles: config.roles });
  const results: RunResult[] = [];

  function track(events: readonly StreamEvent[]): readonly RunEvent[] {
    if (events.length === 0) return NOTHING;
    let all: RunEvent[] | null = null;
    for (const event of events) {
      const reported = tracker.accept(corrected(event));
      if (reported.length > 0) all = all === null ? [...reported] : all.concat(reported);
    }
    return all === null ? NOTHING : keepResults(all);
  }

  /** The one place where probes' calibrations enter; null where there is none to apply. */
  const corrections = config.probeCorrections?.some((one) => one !== null) ? config.probeCorrections : null;

  function corrected(event: StreamEvent): StreamEvent {
    if (corrections === null || event.kind !== 'reading') return event;
    return { kind: 'reading', reading: correctedReading(event.reading, corrections) };
  }

  let shownRaw: Reading | null = null;
  let shown: Reading | null = null;
  function latestReading(): Reading | null {
    const raw = assembler.latestReading;
    if (corrections === null || raw === null) return raw;
    if (raw !== shownRaw) shown = correctedReading(raw, corrections);
    shownRaw = raw;
    return shown;
  }

  function keepResults(events: readonly RunEvent[]): readonly RunEvent[] {
    return events.map((event) => {
      if (event.kind !== 'run-finished') return event;
      const result = withClock(event.result, assembler.clock);
      results.push(result);
      return { kind: 'run-finished', result };
    });
  }

  return {
    accept: (entry: RecordingEntry) => track(assembler.accept(entry)),
    finish: () => [...track(assembler.finish()), ...keepResults(tracker.finish())],
    get latestReading() {
      return latestReading();
    },
    get state() {
      return {
        run: tracker.state,
        results,
        latestReading: latestReading(),
        counts: assembler.counts,
        clock: assembler.clock,
        identity: assembler.identity,
        recognised: config.decoder.recognised,
        refusal: assembler.refusal,
      };
    },
  };
}
