import { createReadingAssembler } from '../reading/create-reading-assembler.ts';
import type { Reading, StreamEvent } from '../reading/StreamEvent.ts';
import type { RecordingEntry } from '../recording/RecordingEntry.ts';
import type { RunEvent } from '../run/RunEvent.ts';
import { createClockCheckpoints } from './clock-checkpoints.ts';
import { correctedReading } from './corrected-reading.ts';
import { createRunStage, usedCorrections } from './create-run-stage.ts';
import type { Session, SessionConfig } from './Session.ts';

const NOTHING: readonly RunEvent[] = Object.freeze([]);

/**
 * Joins decoder, reading assembler and run stage into the one pipeline from entries to runs.
 * Pure apart from its own state: the same entries give the same events, live or replayed.
 */
export function createSession(config: SessionConfig): Session {
  const assembler = createReadingAssembler({ decoder: config.decoder });
  const checkpoints = createClockCheckpoints(() => assembler.clock);
  const { roles, rules, probeCorrections } = config;
  const stage = createRunStage({
    roles,
    rules,
    ...(probeCorrections === undefined ? {} : { probeCorrections }),
    clock: () => checkpoints.latest,
  });
  const corrections = usedCorrections(probeCorrections);

  function track(events: readonly StreamEvent[]): readonly RunEvent[] {
    let all: readonly RunEvent[] = NOTHING;
    for (const event of events) {
      if (event.kind === 'reading') checkpoints.afterReading();
      const reported = stage.accept(event);
      if (reported.length > 0) all = all.length === 0 ? reported : all.concat(reported);
    }
    return all;
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

  return {
    accept: (entry: RecordingEntry) => track(assembler.accept(entry)),
    finish() {
      const last = track(assembler.finish());
      checkpoints.atEnd();
      return [...last, ...stage.finish()];
    },
    get latestReading() {
      return latestReading();
    },
    get state() {
      return {
        run: stage.state,
        results: stage.results,
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
