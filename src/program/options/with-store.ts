import { existsSync } from 'node:fs';
import type { Store } from '../../core/store/Store.ts';

export interface StoreOptions {
  readonly store?: string;
}

/** Opens the store that option, environment or platform name, hands it to `work`, and closes it whatever happens. */
export async function withStore<Result>(
  options: StoreOptions,
  work: (store: Store) => Result | Promise<Result>,
): Promise<Result> {
  return closing(await openNamedStore(options), work);
}

/**
 * As `withStore`, for what only reads: a store named by option must be there, so that a mistyped name is told and no empty
 * store is made in its place; before the first start there is nothing to read, and nothing is made either.
 */
export async function readFromStore<Result>(
  options: StoreOptions,
  work: (store: Store) => Result | Promise<Result>,
): Promise<Result> {
  return closing(await openStoreThere(options, true), work);
}

/** As `withStore`, for what changes something that is there already: no store is made. */
export async function changeInStore<Result>(
  options: StoreOptions,
  work: (store: Store) => Result | Promise<Result>,
): Promise<Result> {
  return closing(await openStoreThere(options, false), work);
}

async function closing<Result>(
  store: Store,
  work: (store: Store) => Result | Promise<Result>,
): Promise<Result> {
  try {
    return await work(store);
  } finally {
    store.close();
  }
}

async function openStoreThere(options: StoreOptions, readonly: boolean): Promise<Store> {
  const [{ openStore }, { StoreError }, { storePath }] = await Promise.all([
    import('../../adapters/sqlite/open-store.ts'),
    import('../../adapters/sqlite/StoreError.ts'),
    import('./store-path.ts'),
  ]);
  const path = storePath(options);
  if (options.store === undefined && path !== ':memory:' && !existsSync(path))
    return openStore({ path: ':memory:' });
  try {
    const store = openStore({ path, readonly: true });
    if (readonly) return store;
    store.close();
  } catch (error) {
    // One of an older program is brought up to date; one that is not there is refused.
    if (!(error instanceof StoreError) || error.code !== 'store-older') throw error;
  }
  return openStore({ path });
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
