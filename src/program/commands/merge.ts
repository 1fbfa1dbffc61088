import { mergeStores } from '../../adapters/sqlite/merge-stores.ts';
import { mergeLines } from '../../core/text/merge-text.ts';
import { storePath } from '../options/store-path.ts';
import type { StoreOptions } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';

/** `merge OTHER.db`: brings another store into this one; the other is only read. */
export function merge(other: string, options: StoreOptions & { readonly json?: boolean }): void {
  const report = mergeStores({ ownPath: storePath(options), otherPath: other });
  if (options.json) printJson(report);
  else print(mergeLines(report).join('\n'));
}
