import type { StoreOptions } from '../options/with-store.ts';

/** Options of the home; they hold for everything started from it. */
export interface HomeOptions extends StoreOptions {
  readonly ascii?: boolean;
  readonly show?: 'F' | 'C';
}
