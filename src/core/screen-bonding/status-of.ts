import type { StoreStatus } from '../screen/TrialScreenState.ts';
import type { ViewLine } from '../screen/TrialView.ts';
import { STATUS_TEXT } from '../text/status-text.ts';

/** Store and free disk for a status line; a store that cannot write stands out. */
export function diskText(store: StoreStatus | null, storePath: string): readonly ViewLine[] {
  const name = storePath.split(/[/\\]/).at(-1) ?? storePath;
  if (store?.trouble != null) return [{ text: STATUS_TEXT.storeTrouble(store.trouble), role: 'fault' }];
  const free =
    store?.freeBytes == null ? [] : [{ text: STATUS_TEXT.free(store.freeBytes), role: 'quiet' as const }];
  return [{ text: STATUS_TEXT.store(name), role: 'quiet' }, ...free];
}
