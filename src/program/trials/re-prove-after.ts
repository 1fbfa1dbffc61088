import type { Store } from '../../core/store/Store.ts';
import { parseCount } from '../options/parse-count.ts';

/** Setting of the store: days after which the shop proves a recipe anew. */
export const RE_PROVE_AFTER_KEY = 're-prove-after-days';

/** Keeps what `--re-prove-after` states; "never" takes it out. */
export function keepReProveAfter(store: Pick<Store, 'saveSetting'>, text: string): void {
  const days =
    text.trim().toLowerCase() === 'never'
      ? 0
      : parseCount(text.replace(/\s*(?:d|days?)$/iu, ''), '--re-prove-after', { least: 1, most: 36_500 });
  store.saveSetting(RE_PROVE_AFTER_KEY, String(days));
}
