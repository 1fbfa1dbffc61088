import { DwellwrightError } from '../DwellwrightError.ts';

export type ProbeErrorCode =
  | 'probe-wrong'
  | 'point-wrong'
  | 'no-tolerance-here'
  | 'pressure-out-of-range'
  | 'probe-record-unreadable';

/** What is stated of a probe cannot be, or says nothing at the temperature asked. */
export class ProbeError extends DwellwrightError {
  override readonly name = 'ProbeError';

  constructor(code: ProbeErrorCode, message: string, remedy: string) {
    super(code, message, { remedy });
  }
}
