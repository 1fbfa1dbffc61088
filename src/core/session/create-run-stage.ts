import type { ProbeCorrection } from '../probe/probe-correction.ts';
import type { ReadingColumns } from '../reading/ReadingColumns.ts';
import type { ClockComparison, OperatorMark, StreamEvent } from '../reading/StreamEvent.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';
import { createRunTracker } from '../run/create-run-tracker.ts';
import type { RunEvent, RunState } from '../run/RunEvent.ts';
import type { RunResult, RunRules } from '../run/RunResult.ts';
import type { TraceRoom } from '../run/TraceBuffer.ts';
import { correctedReading } from './corrected-reading.ts';
import { spoiltAfterwards } from './spoilt-afterwards.ts';
import { withClock } from './with-clock.ts';

const NOTHING: readonly RunEvent[] = Object.freeze([]);

export interface RunStageConfig {
  readonly roles: readonly ChannelRole[];
  readonly rules: RunRules;
  /** By channel, channel 1 first: what turns readings into true temperatures; null where none. */
  readonly probeCorrections?: readonly (ProbeCorrection | null)[];
  /** The reader's clock against the host's at this point of the recording. */
  readonly clock: () => ClockComparison;
  /** For analyses made one after the other. */
  readonly room?: TraceRoom;
}

/** The part of the pipeline behind the readings: calibration of the probes, run tracker, clock judged. */
export interface RunStage {
  accept(event: StreamEvent): readonly RunEvent[];
  /** The same with the reading at a row of columns that are corrected already. */
  acceptRow(columns: ReadingColumns, row: number): readonly RunEvent[];
  finish(): readonly RunEvent[];
  readonly results: readonly RunResult[];
  readonly state: RunState;
}

/** Calibrations that apply; null where there is none at all. */
export function usedCorrections(
  corrections: RunStageConfig['probeCorrections'],
): readonly (ProbeCorrection | null)[] | null {
  return corrections?.some((one) => one !== null) ? corrections : null;
}

function isAboutSpoilt(mark: OperatorMark): boolean {
  return mark.kind === 'spoilt' || (mark.kind === 'undo' && mark.what === 'spoilt');
}

/** Follows runs through readings, whether just decoded or decoded before and kept. */
export function createRunStage(config: RunStageConfig): RunStage {
  const tracker = createRunTracker({
    rules: config.rules,
    roles: config.roles,
    ...(config.room === undefined ? {} : { room: config.room }),
  });
  const corrections = usedCorrections(config.probeCorrections);
  const results: RunResult[] = [];

  /** The one place where probes' calibrations enter. */
  function corrected(event: StreamEvent): StreamEvent {
    if (corrections === null || event.kind !== 'reading') return event;
    return { kind: 'reading', reading: correctedReading(event.reading, corrections) };
  }

  function keepResults(events: readonly RunEvent[]): readonly RunEvent[] {
    if (events.length === 0) return NOTHING;
    return events.map((event) => {
      if (event.kind !== 'run-finished') return event;
      const result = withClock(event.result, config.clock());
      results.push(result);
      unmarked = result;
      return { kind: 'run-finished', result };
    });
  }

  let unmarked: RunResult | null = null;

  /** With no run open, spoilt and its undo are about the run that finished last, which is then told again. */
  function markedAfterwards(mark: OperatorMark): readonly RunEvent[] {
    const result = unmarked === null ? null : spoiltAfterwards(mark, unmarked);
    if (result === null) return NOTHING;
    results[results.length - 1] = result;
    return [{ kind: 'run-finished', result }];
  }

  return {
    accept: (event) =>
      event.kind === 'mark' && tracker.state.phase === 'waiting' && isAboutSpoilt(event.mark)
        ? markedAfterwards(event.mark)
        : keepResults(tracker.accept(corrected(event))),
    acceptRow: (columns, row) => keepResults(tracker.acceptRow(columns, row)),
    finish: () => keepResults(tracker.finish()),
    results,
    get state() {
      return tracker.state;
    },
  };
}
