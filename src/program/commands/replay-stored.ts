import { OptionError } from '../options/OptionError.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';
import { type AnalyseOptions, analyseSource } from '../sources/analyse-source.ts';
import { recordingSource } from '../sources/recording-source.ts';
import { type ReplayedSource, type ReplayReportOptions, reportReplay } from '../sources/report-replay.ts';
import type { SourceOptions } from '../sources/Source.ts';
import { findTrial } from '../trials/stored-outcome.ts';

type Options = ReplayReportOptions & AnalyseOptions & SourceOptions & StoreOptions;

/** `replay --trial ID`: the trial's own recordings, straight from the store, with the decisions made on its runs. */
export async function replayStored(trialId: string, options: Options): Promise<void> {
  await readFromStore(options, (store) => {
    const trial = findTrial(store, trialId);
    const decided = store.trialRuns(trial.trialId);
    const replayed: readonly ReplayedSource[] = trial.recordingIds.flatMap((id) => {
      const recording = store.recording(id);
      if (recording === undefined) return [];
      const source = recordingSource(id, recording, options);
      const decisionOf: ReplayedSource['decisionOf'] = (runNumber) =>
        decided.find((run) => run.recordingId === id && run.result.runNumber === runNumber)?.decision ?? {
          kind: 'automatic',
        };
      return [{ source, analysis: analyseSource(source, options), decisionOf }];
    });
    if (replayed.length === 0)
      throw new OptionError(`trial ${trial.trialId} has no recording`, 'Nothing was recorded in it');
    reportReplay(replayed, options);
  });
}
