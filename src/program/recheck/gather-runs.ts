import { analyseTrace } from '../../core/session/analyse-trace.ts';
import { DECODE_VERSION, type DecodedTrace } from '../../core/session/DecodedTrace.ts';
import { decodeTrace } from '../../core/session/decode-trace.ts';
import { traceFromBytes, traceToBytes } from '../../core/session/trace-bytes.ts';
import { withTimeResolution } from '../../core/session/with-time-resolution.ts';
import type { Store, StoredTrial } from '../../core/store/Store.ts';
import type { TrialRun } from '../../core/trial/TrialResult.ts';
import type { RuleOptions } from '../options/run-rules.ts';
import { correctionsOf, sourceConditions } from '../sources/analyse-source.ts';
import { openSource } from '../sources/open-source.ts';
import { recordingSource } from '../sources/recording-source.ts';
import type { Source, SourceOptions } from '../sources/Source.ts';

export interface GatheredRun {
  readonly run: TrialRun;
  /** As it was stored; null for files. */
  readonly before: TrialRun['result'] | null;
}

/** A recording whose runs are looked at, perhaps by several rules in turn. */
export interface GatheredSource {
  readonly name: string;
  runs(options: RuleOptions): readonly GatheredRun[];
}

/** Recordings of these trials. A trace that was not kept yet is decoded once and kept. */
export function* storedSources(store: Store, trials: readonly StoredTrial[]): Generator<GatheredSource> {
  for (const trial of trials) {
    const stored = store.trialRuns(trial.trialId);
    for (const id of trial.recordingIds) {
      const recording = store.recording(id);
      if (recording === undefined) continue;
      const source = recordingSource(id, recording, {});
      const ofRun = (runNumber: number) =>
        stored.find((run) => run.recordingId === id && run.result.runNumber === runNumber);
      yield {
        name: id,
        runs: (options) =>
          analysed(source, keptOrDecoded(store, id, source), options).map((result) => ({
            run: { source: id, result, decision: ofRun(result.runNumber)?.decision ?? { kind: 'automatic' } },
            before: ofRun(result.runNumber)?.result ?? null,
          })),
      };
    }
  }
}

/** Files, opened one after the other and let go: memory stays that of the largest. */
export async function* fileSources(
  files: readonly string[],
  options: SourceOptions,
): AsyncGenerator<GatheredSource> {
  for (const file of files) {
    const source = await openSource(file, options);
    const trace = decodeTrace(source.entries(), source.decoder);
    yield {
      name: file,
      runs: (rules) =>
        analysed(source, trace, rules).map((result) => ({
          run: { source: file, result, decision: { kind: 'automatic' } },
          before: null,
        })),
    };
  }
}

function analysed(source: Source, trace: DecodedTrace, options: RuleOptions): readonly TrialRun['result'][] {
  const { rules, probes } = sourceConditions(source, options);
  const results = analyseTrace(trace, {
    roles: source.roles,
    rules,
    probeCorrections: correctionsOf(probes),
  });
  return source.timeStepS > 0
    ? results.map((result) => withTimeResolution(result, source.timeStepS))
    : results;
}

function keptOrDecoded(store: Store, id: string, source: Source): DecodedTrace {
  const kept = store.keptTrace(id, DECODE_VERSION);
  const trace = kept === undefined ? null : traceFromBytes(kept);
  if (trace !== null) return trace;
  const decoded = decodeTrace(source.entries(), source.decoder);
  store.keepTrace(id, DECODE_VERSION, traceToBytes(decoded));
  return decoded;
}
