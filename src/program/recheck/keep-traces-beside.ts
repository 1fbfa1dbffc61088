import type { Store } from '../../core/store/Store.ts';
import type { RecordingAnalysis } from './RecordingAnalysis.ts';

/** Traces written at a time: one write to disk for all of them, a few megabytes at most. */
const AT_A_TIME = 50;

/** Keeps the traces of analyses in the store, some at a time; `end` writes the rest. */
export function keepTracesBeside(store: Store, decodeVersion: number) {
  let waiting: { readonly recordingId: string; readonly trace: Uint8Array }[] = [];
  const write = (): void => {
    if (waiting.length > 0) store.keepTraces(waiting, decodeVersion);
    waiting = [];
  };
  return {
    take(analysis: RecordingAnalysis | null): void {
      if (analysis === null || analysis.traceToKeep === null) return;
      waiting.push({ recordingId: analysis.name, trace: analysis.traceToKeep });
      if (waiting.length >= AT_A_TIME) write();
    },
    end: write,
  };
}
