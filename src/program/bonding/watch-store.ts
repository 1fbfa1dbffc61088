import { statfs } from 'node:fs/promises';
import { dirname } from 'node:path';
import type { StoreStatus } from '../../core/screen/TrialScreenState.ts';
import type { Store } from '../../core/store/Store.ts';

/** Tells once a second how store and disk stand. Returns how to stop. */
export function watchStore(store: Store, trouble: () => string | null, tell: (status: StoreStatus) => void) {
  const look = async (): Promise<void> => {
    const freeBytes = await statfs(dirname(store.path)).then(
      ({ bavail, bsize }) => bavail * bsize,
      () => null,
    );
    tell({ p99Ms: null, freeBytes, trouble: trouble() });
  };
  void look();
  const timer = setInterval(() => void look(), 1000);
  return () => clearInterval(timer);
}
