import type { Store } from '../../core/store/Store.ts';
import { analyseSource } from '../sources/analyse-source.ts';
import { recordingSource } from '../sources/recording-source.ts';

/**
 * Runs of a trial that were under way when the program was killed: worked out from their recordings and stored, each with
 * the reasons that its cut record gives. Runs that are stored already stay as they are. Returns how many were added.
 */
export function storeInterruptedRuns(store: Store, trialId: string): number {
  const trial = store.trials().find((one) => one.trialId === trialId);
  const stored = new Set(
    store.trialRuns(trialId).map(({ recordingId, result }) => `${recordingId} ${result.runNumber}`),
  );
  let added = 0;
  for (const recordingId of trial?.recordingIds ?? []) {
    const recording = store.recording(recordingId);
    if (recording === undefined || recording.soundness.kind !== 'not-closed') continue;
    const source = recordingSource(recordingId, recording, {});
    for (const result of analyseSource(source, {}).results) {
      if (result.pressClosed === null || stored.has(`${recordingId} ${result.runNumber}`)) continue;
      store.saveRunResult(recordingId, result);
      added += 1;
    }
  }
  return added;
}
