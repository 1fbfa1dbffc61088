import { OptionError } from '../options/OptionError.ts';
import type { RuleOptions } from '../options/run-rules.ts';
import { withStore } from '../options/with-store.ts';
import { analyseSource } from '../sources/analyse-source.ts';
import { recordingSource } from '../sources/recording-source.ts';
import type { Source, SourceOptions } from '../sources/Source.ts';
import { findTrial } from '../trials/stored-outcome.ts';
import type { report } from './replay.ts';

type Options = Parameters<typeof report>[1] & RuleOptions & SourceOptions & { readonly store?: string };

/** `replay --trial ID`: the trial's own recordings, straight from the store. */
export async function replayStored(trialId: string, options: Options, tell: typeof report): Promise<void> {
  await withStore(options, (store) => {
    const trial = findTrial(store, trialId);
    const sources: readonly Source[] = trial.recordingIds.flatMap((id) => {
      const recording = store.recording(id);
      return recording === undefined ? [] : [recordingSource(id, recording, options)];
    });
    if (sources.length === 0)
      throw new OptionError(`trial ${trial.trialId} has no recording`, 'Nothing was recorded in it');
    tell(
      sources.map((source) => ({ source, analysis: analyseSource(source, options) })),
      options,
    );
  });
}
