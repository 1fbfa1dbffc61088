import type { StoreOptions } from '../options/with-store.ts';

/** Options of the home; they hold for everything started from it. */
export interface HomeOptions extends StoreOptions {
  /** Simulated reader: times real time; '1' unless given. */
  readonly speed?: string;
  readonly ascii?: boolean;
  readonly show?: 'F' | 'C';
}
