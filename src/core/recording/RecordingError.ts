import { DwellwrightError } from '../DwellwrightError.ts';

export type RecordingErrorCode =
  | 'recording-not-one'
  | 'recording-version'
  | 'recording-head-cut'
  | 'recording-head-wrong';

/** A text that cannot be opened as a recording at all, or a head that cannot be written as one. */
export class RecordingError extends DwellwrightError {
  override readonly name = 'RecordingError';

  constructor(code: RecordingErrorCode, message: string, remedy: string) {
    super(code, message, { remedy });
  }
}
