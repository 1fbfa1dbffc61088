import { defaultStorePath } from '../../adapters/files/default-store-path.ts';
import { demoStorePath } from '../../adapters/files/demo-store-path.ts';

/** As `--store`: the demo's own store, beside the real one. A file of this name is `./demo`. */
export const DEMO_STORE = 'demo';

/** The store's file: the option, else DWELLWRIGHT_STORE, else the platform's data folder. */
export function storePath(options: { readonly store?: string }): string {
  return options.store === DEMO_STORE
    ? demoStorePath(defaultStorePath())
    : (options.store ?? defaultStorePath());
}
