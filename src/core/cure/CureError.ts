import { DwellwrightError } from '../DwellwrightError.ts';

/** Figures of a cure that cannot be. */
export class CureError extends DwellwrightError {
  override readonly name = 'CureError';

  constructor(message: string, remedy: string) {
    super('cure-facts-wrong', message, { remedy });
  }
}
