import { recordingDecoder } from '../../core/exchange/recording-decoder.ts';
import type {
  RecordingEntry,
  RecordingHead,
  RecordingSoundness,
} from '../../core/recording/RecordingEntry.ts';
import { parseRoles } from '../options/run-rules.ts';
import type { Source, SourceOptions } from './Source.ts';

interface OpenRecording {
  readonly head: RecordingHead;
  entries(): Iterable<RecordingEntry>;
  readonly soundness: RecordingSoundness;
}

/** A recording, from a file or from the store, ready to replay. An option goes before what its head says. */
export function recordingSource(name: string, recording: OpenRecording, options: SourceOptions): Source {
  const { head } = recording;
  const statedUnit = options.unit ?? head.statedUnit;
  const { decoder, timeStepS } = recordingDecoder(head, statedUnit);
  return {
    name,
    identity: head.recordingId,
    head,
    decoder,
    roles: options.roles === undefined ? head.roles : parseRoles(options.roles, '--roles', options),
    timeStepS,
    entries: () => recording.entries(),
    soundness: () => recording.soundness,
  };
}
