import { openStore } from '../../adapters/sqlite/open-store.ts';
import { analyseFile } from './analyse-file.ts';
import { analyseStored } from './analyse-stored.ts';
import type { AskedRules, RecordingAnalysis, RecordingPlace } from './RecordingAnalysis.ts';

export interface RecordingAnalyser {
  /** Runs of the recording of this name; null where there is none. */
  analyse(name: string): Promise<RecordingAnalysis | null>;
  close(): void;
}

/** Analyses recordings of one place, one after the other. The store is only read. */
export function recordingAnalyser(place: RecordingPlace, asked: AskedRules): RecordingAnalyser {
  if (place.kind === 'files')
    return { analyse: (name) => analyseFile(name, place.options, asked), close: () => {} };
  const store = openStore({ path: place.path, readonly: true });
  return {
    analyse: async (name) => analyseStored(store, name, asked),
    close: () => store.close(),
  };
}
