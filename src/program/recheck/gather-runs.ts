import { DECODE_VERSION } from '../../core/session/DecodedTrace.ts';
import type { Store, StoredTrial } from '../../core/store/Store.ts';
import type { TrialRun } from '../../core/trial/TrialResult.ts';
import { storePath } from '../options/store-path.ts';
import type { StoreOptions } from '../options/with-store.ts';
import { progressBar } from '../output/progress-bar.ts';
import type { SourceOptions } from '../sources/Source.ts';
import { analyseRecordings } from './analyse-recordings.ts';
import type { Gathered } from './GatheredRun.ts';
import { keepTracesBeside } from './keep-traces-beside.ts';
import type { AskedRules, RecordingAnalysis } from './RecordingAnalysis.ts';

/** Runs of these trials' recordings, analysed anew. A trace that was not kept yet is decoded once and kept. */
export async function gatherStored(
  store: Store,
  trials: readonly StoredTrial[],
  options: StoreOptions,
  asked: AskedRules,
): Promise<Gathered> {
  const ids = trials.flatMap(({ recordingIds }) => recordingIds);
  const keeping = keepTracesBeside(store, DECODE_VERSION);
  const place = { kind: 'store', path: storePath(options) } as const;
  const analyses = await withBar(ids.length, (step) =>
    analyseRecordings({ place, asked }, ids, (analysis) => {
      keeping.take(analysis);
      step();
    }),
  );
  keeping.end();
  const stored = new Map(
    trials.flatMap(({ trialId }) =>
      store.trialRuns(trialId).map((run) => [`${run.recordingId} ${run.result.runNumber}`, run] as const),
    ),
  );
  return joined(analyses, (name, runNumber) => stored.get(`${name} ${runNumber}`) ?? null);
}

/** Runs of files, by the rules asked for. */
export async function gatherFiles(
  files: readonly string[],
  options: SourceOptions,
  asked: AskedRules,
): Promise<Gathered> {
  const place = { kind: 'files', options } as const;
  const analyses = await withBar(files.length, (step) => analyseRecordings({ place, asked }, files, step));
  return joined(analyses, () => null);
}

async function withBar<Result>(count: number, work: (step: () => void) => Promise<Result>): Promise<Result> {
  const bar = progressBar('recordings', count);
  try {
    return await work(() => bar.step());
  } finally {
    bar.end();
  }
}

function joined(
  all: readonly RecordingAnalysis[],
  storedRun: (name: string, runNumber: number) => TrialRun | null,
): Gathered {
  const asRun = (name: string, result: TrialRun['result']): TrialRun => ({
    source: name,
    result,
    decision: storedRun(name, result.runNumber)?.decision ?? { kind: 'automatic' },
  });
  // The same recording given twice counts once.
  const analyses = [...new Map(all.map((one) => [one.identity, one])).values()];
  return {
    runs: analyses.flatMap(({ name, identity, madeOn, results }) =>
      results.map((result) => ({
        run: asRun(name, result),
        before: storedRun(name, result.runNumber)?.result ?? null,
        recordingId: identity,
        madeOn,
      })),
    ),
    probes: analyses.flatMap(({ probes }) => probes),
    atTargets: (analyses[0]?.atTargets ?? []).map((_, at) =>
      analyses.flatMap(({ name, atTargets }) => (atTargets[at] ?? []).map((result) => asRun(name, result))),
    ),
  };
}
