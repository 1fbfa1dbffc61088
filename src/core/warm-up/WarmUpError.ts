import { DwellwrightError } from '../DwellwrightError.ts';

/** A recording from which no warm-up, survey or comparison can be worked out. */
export class WarmUpError extends DwellwrightError {
  override readonly name = 'WarmUpError';

  constructor(code: string, message: string, remedy: string) {
    super(code, message, { remedy, exitCode: 2 });
  }
}
