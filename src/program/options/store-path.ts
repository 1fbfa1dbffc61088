import { defaultStorePath } from '../../adapters/files/default-store-path.ts';

/** The store's file: the option, else DWELLWRIGHT_STORE, else the platform's data folder. */
export function storePath(options: { readonly store?: string }): string {
  return options.store ?? defaultStorePath();
}
