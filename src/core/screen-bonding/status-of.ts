import type { StoreStatus } from '../screen/TrialScreenState.ts';
import type { ViewLine } from '../screen/TrialView.ts';

/** Store and free disk for a status line; a store that cannot write stands out. */
export function diskText(store: StoreStatus | null, storePath: string): readonly ViewLine[] {
  const name = storePath.split(/[/\\]/).at(-1) ?? storePath;
  if (store?.trouble != null) return [{ text: `NOT ON DISK: ${store.trouble}`, role: 'fault' }];
  const free =
    store?.freeBytes == null
      ? []
      : [{ text: `${(store.freeBytes / 1e9).toFixed(0)} GB free`, role: 'quiet' as const }];
  return [{ text: `store ${name}`, role: 'quiet' }, ...free];
}
