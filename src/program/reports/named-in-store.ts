import { existsSync } from 'node:fs';
import type { Assembly, Press } from '../../core/press/Press.ts';
import { storePath } from '../options/store-path.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';

/** Assembly and press of these names, where a store exists and holds them; no store is made for the asking. */
export async function namedInStore(
  names: { readonly assemblyName: string | null; readonly pressName: string | null },
  options: StoreOptions,
): Promise<{ readonly assembly: Assembly | null; readonly press: Press | null }> {
  if (!existsSync(storePath(options))) return { assembly: null, press: null };
  return readFromStore(options, (store) => ({
    assembly: store.assemblies().find(({ name }) => name === names.assemblyName) ?? null,
    press: store.presses().find(({ name }) => name === names.pressName) ?? null,
  }));
}
