import type { Store } from '../../core/store/Store.ts';

export interface StoreOptions {
  readonly store?: string;
}

/** Opens the store that option, environment or platform name, hands it to `work`, and closes it whatever happens. */
export async function withStore<Result>(
  options: StoreOptions,
  work: (store: Store) => Result | Promise<Result>,
): Promise<Result> {
  const store = await openNamedStore(options);
  try {
    return await work(store);
  } finally {
    store.close();
  }
}

/**
 * As `withStore`, for a caller that closes the store itself. `onTrouble` hears when what was recorded cannot be put on
 * disk; it is kept and tried again.
 */
export async function openNamedStore(
  options: StoreOptions,
  onTrouble?: (error: unknown) => void,
): Promise<Store> {
  const [{ openStore }, { storePath }] = await Promise.all([
    import('../../adapters/sqlite/open-store.ts'),
    import('./store-path.ts'),
  ]);
  return openStore({ path: storePath(options), ...(onTrouble === undefined ? {} : { onTrouble }) });
}
