import { DwellwrightError } from '../../core/DwellwrightError.ts';

export type StoreErrorCode =
  | 'store-missing'
  | 'store-is-folder'
  | 'store-cannot-open'
  | 'store-not-a-store'
  | 'store-newer'
  | 'store-migration-missing'
  | 'store-migration-differs'
  | 'store-older'
  | 'store-no-wal'
  | 'store-busy'
  | 'store-disk-full'
  | 'store-read-only'
  | 'store-disk-fault'
  | 'store-corrupt'
  | 'store-failed'
  | 'store-closed'
  | 'store-recording-exists'
  | 'store-no-recording'
  | 'store-no-trial'
  | 'store-trial-exists'
  | 'store-recording-closed'
  | 'store-not-finite'
  | 'store-unreadable';

/** Trouble with the store's file or a wrong use of it; the database's own error, where there is one, is the cause. */
export class StoreError extends DwellwrightError {
  override readonly name = 'StoreError';
  override readonly code: StoreErrorCode;

  constructor(code: StoreErrorCode, refusal: readonly [message: string, remedy: string], cause?: unknown) {
    super(code, refusal[0], { remedy: refusal[1], ...(cause === undefined ? {} : { cause }) });
    this.code = code;
  }
}
