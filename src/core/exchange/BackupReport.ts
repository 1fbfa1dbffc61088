import type { StoreVerification } from './StoreVerification.ts';

/** A backup that was made. */
export interface BackupReport {
  readonly path: string;
  readonly bytes: number;
  /** The backup itself, checked after it was written. */
  readonly verification: StoreVerification;
}
