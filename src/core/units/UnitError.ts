import { DwellwrightError } from '../DwellwrightError.ts';

export type UnitErrorCode = 'unit-missing' | 'unit-unknown' | 'number-unreadable' | 'value-out-of-range';

/** A value given with no unit, a unit we do not know, an unreadable number or a value that cannot be. */
export class UnitError extends DwellwrightError {
  override readonly name = 'UnitError';
  /** The option or field the value was given for, as the user knows it (`--target`). */
  readonly option: string;
  readonly given: string;

  constructor(
    code: UnitErrorCode,
    message: string,
    facts: { option: string; given: string; remedy: string },
  ) {
    super(code, message, { remedy: facts.remedy });
    this.option = facts.option;
    this.given = facts.given;
  }
}
