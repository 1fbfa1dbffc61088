import { DwellwrightError } from '../DwellwrightError.ts';

export type StatisticsErrorCode =
  | 'value-not-finite'
  | 'too-few-values'
  | 'probability-out-of-range'
  | 'option-out-of-range';

/** A caller asked statistics for something they cannot give: a value that is no number, too few values. */
export class StatisticsError extends DwellwrightError {
  override readonly name = 'StatisticsError';

  constructor(code: StatisticsErrorCode, message: string, remedy: string) {
    super(code, message, { remedy });
  }
}
