import { createLoggerFileDecoder } from '../logger-file/create-logger-file-decoder.ts';
import type { RecordingHead } from '../recording/RecordingEntry.ts';
import { createReaderDecoder } from '../wire/create-reader-decoder.ts';
import type { LineDecoder } from '../wire/WireEvent.ts';
import { headLayout } from './head-layout.ts';

/**
 * The decoder that a recording's lines need: that of its logger's layout where it was imported, else that of a reader.
 * `timeStepS` is the step in which a logger wrote its times, 0 for a reader.
 */
export function recordingDecoder(
  head: RecordingHead,
  statedUnit = head.statedUnit,
): { readonly decoder: LineDecoder; readonly timeStepS: number } {
  const layout = headLayout(head);
  if (layout !== null) return { decoder: createLoggerFileDecoder(layout), timeStepS: layout.timeResolutionS };
  return { decoder: createReaderDecoder(statedUnit === undefined ? {} : { statedUnit }), timeStepS: 0 };
}
