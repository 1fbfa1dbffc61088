import { recordingDecoder } from '../../core/exchange/recording-decoder.ts';
import { headProbes } from '../../core/probe/head-probes.ts';
import { createReadingAssembler } from '../../core/reading/create-reading-assembler.ts';
import type { Reading } from '../../core/reading/StreamEvent.ts';
import type { RunTrace } from '../../core/screen-records/RecordsState.ts';
import { correctedReading } from '../../core/session/corrected-reading.ts';
import type { Store } from '../../core/store/Store.ts';
import { runRules } from '../options/run-rules.ts';
import { correctionsOf } from '../sources/analyse-source.ts';

/** Shown before press closed and after the run's end, s. */
const BEFORE_S = 30;
const AFTER_S = 30;

/** Readings of the chosen runs of a trial, straight from their recordings, counted from press closed. */
export function loadTraces(store: Store, trialId: string, runs: readonly number[]): readonly RunTrace[] {
  const all = store.trialRuns(trialId);
  const byRecording = new Map<string, readonly Reading[]>();
  return runs.flatMap((run) => {
    const found = all[run];
    const recording = found === undefined ? undefined : store.recording(found.recordingId);
    if (found === undefined || recording === undefined) return [];
    const readings = byRecording.get(found.recordingId) ?? readingsOf(recording);
    byRecording.set(found.recordingId, readings);
    const { pressClosed, crossing, openedS, endedS } = found.result;
    const zeroS = pressClosed?.timeS ?? 0;
    const { targetC } = runRules({}, { targetC: recording.head.targetC });
    return [
      {
        run,
        roles: recording.head.roles,
        closedKnown: pressClosed !== null,
        targetC,
        crossingS: crossing === null ? null : crossing.timeS - zeroS,
        openedS: openedS === null ? null : openedS - zeroS,
        readings: readings
          .filter(({ timeS }) => timeS >= zeroS - BEFORE_S && timeS <= endedS + AFTER_S)
          .map(({ timeS, values }) => ({ timeS: timeS - zeroS, values })),
      },
    ];
  });
}

type Recording = NonNullable<ReturnType<Store['recording']>>;

const readingsOf = (recording: Recording): readonly Reading[] =>
  readingsBetween(recording, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);

/** Readings of a recording between two of its own times, s, corrected by its probes; a shift of many hours never stands in memory whole. */
export function readingsBetween(recording: Recording, fromS: number, toS: number): readonly Reading[] {
  const assembler = createReadingAssembler({ decoder: recordingDecoder(recording.head).decoder });
  const corrections = correctionsOf(headProbes(recording.head));
  const readings: Reading[] = [];
  const keep = (events: ReturnType<typeof assembler.finish>) => {
    for (const event of events)
      if (event.kind === 'reading' && event.reading.timeS >= fromS && event.reading.timeS <= toS)
        readings.push(correctedReading(event.reading, corrections));
  };
  for (const entry of recording.entries()) keep(assembler.accept(entry));
  keep(assembler.finish());
  return readings;
}
