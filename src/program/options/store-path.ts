import { defaultStorePath } from '../../adapters/files/default-store-path.ts';
import type { StoreOptions } from './with-store.ts';

/** The store's file: the option, else DWELLWRIGHT_STORE, else the platform's data folder. */
export function storePath(options: StoreOptions): string {
  return options.store ?? defaultStorePath();
}
