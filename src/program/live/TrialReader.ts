import type { MonotonicClock, ReaderLink } from '../../core/reading/ReaderLink.ts';
import type { LiveTrialOptions } from './live-trial.ts';

/** A reader ready for a trial, live or simulated. */
export interface TrialReader {
  readonly link: ReaderLink;
  /** Stamps readings and marks. */
  readonly clock: MonotonicClock;
  readonly watchSleep: LiveTrialOptions['watchSleep'];
  /** 1 except for a simulation. */
  readonly speed: number;
  /** A simulated press that a person works: what the keys mark also happens there. */
  readonly hand?: { closePress(): void; openPress(): void };
}
