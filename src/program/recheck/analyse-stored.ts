import { DECODE_VERSION } from '../../core/session/DecodedTrace.ts';
import { decodeTrace } from '../../core/session/decode-trace.ts';
import { traceFromBytes, traceToBytes } from '../../core/session/trace-bytes.ts';
import type { Store } from '../../core/store/Store.ts';
import { recordingSource } from '../sources/recording-source.ts';
import { analyseSourceByRules } from './analyse-source-by-rules.ts';
import type { AskedRules, RecordingAnalysis } from './RecordingAnalysis.ts';

const SOUND = Object.freeze({ kind: 'sound' });

/**
 * Runs of a stored recording: from its kept trace, else from its lines. Only a sound recording's trace is offered for
 * keeping, so that a damaged one is told each time. Null where the store holds none of this id.
 */
export function analyseStored(store: Store, id: string, asked: AskedRules): RecordingAnalysis | null {
  const recording = store.recording(id);
  if (recording === undefined) return null;
  const source = recordingSource(id, recording, {});
  const kept = store.keptTrace(id, DECODE_VERSION);
  const trace = kept === undefined ? null : traceFromBytes(kept);
  if (trace !== null) return { ...analyseSourceByRules(source, trace, SOUND, asked), traceToKeep: null };
  const decoded = decodeTrace(source.entries(), source.decoder);
  const soundness = source.soundness();
  return {
    ...analyseSourceByRules(source, decoded, soundness, asked),
    traceToKeep: soundness.kind === 'sound' ? traceToBytes(decoded) : null,
  };
}
