import { DwellwrightError } from '../../core/DwellwrightError.ts';

/** An option or argument that cannot be used as given. */
export class OptionError extends DwellwrightError {
  override readonly name = 'OptionError';

  constructor(message: string, remedy: string, code = 'option-unusable') {
    super(code, message, { remedy, exitCode: 2 });
  }
}
