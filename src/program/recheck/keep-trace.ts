import { DECODE_VERSION } from '../../core/session/DecodedTrace.ts';
import { decodeTrace } from '../../core/session/decode-trace.ts';
import { traceToBytes } from '../../core/session/trace-bytes.ts';
import type { Store } from '../../core/store/Store.ts';
import { recordingSource } from '../sources/recording-source.ts';

/** Keeps a sound recording's decoded trace beside it, so that a later re-check need not read its lines. */
export function keepTrace(store: Store, recordingId: string): void {
  const recording = store.recording(recordingId);
  if (recording === undefined || recording.soundness.kind !== 'sound') return;
  const source = recordingSource(recordingId, recording, {});
  const trace = traceToBytes(decodeTrace(source.entries(), source.decoder));
  store.keepTraces([{ recordingId, trace }], DECODE_VERSION);
}
