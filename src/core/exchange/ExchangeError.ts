import { DwellwrightError } from '../DwellwrightError.ts';

export type ExchangeErrorCode =
  | 'import-altered'
  | 'import-broken'
  | 'import-recording-differs'
  | 'import-options-not-used'
  | 'import-trial-differs'
  | 'import-simulated-mixed'
  | 'import-name-missing'
  | 'import-too-wide'
  | 'import-layout-unreadable'
  | 'import-unanswered'
  | 'import-changed'
  | 'import-several-unfit'
  | 'layout-unknown'
  | 'layout-empty'
  | 'export-unknown'
  | 'merge-same-store'
  | 'merge-damaged'
  | 'merge-recording-differs'
  | 'backup-exists'
  | 'backup-same-file'
  | 'backup-not-whole';

/** Something cannot be brought in, handed out, merged or backed up; the message names what. */
export class ExchangeError extends DwellwrightError {
  override readonly name = 'ExchangeError';
  override readonly code: ExchangeErrorCode;

  constructor(
    code: ExchangeErrorCode,
    refusal: readonly [message: string, remedy: string],
    exitCode: 1 | 2 = 2,
  ) {
    super(code, refusal[0], { remedy: refusal[1], exitCode });
    this.code = code;
  }
}
