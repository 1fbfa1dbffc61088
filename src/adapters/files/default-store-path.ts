import { join, resolve } from 'node:path';
import envPaths from 'env-paths';

/**
 * Where the store lies: an option comes first, then the environment's `DWELLWRIGHT_STORE`, then `store.db` in the
 * platform's folder for a program's data. The folder is made when the store is opened.
 */
export function defaultStorePath(
  options: {
    readonly option?: string | undefined;
    readonly environment?: Readonly<Record<string, string | undefined>>;
  } = {},
): string {
  const { option, environment = process.env } = options;
  const chosen = option || environment.DWELLWRIGHT_STORE;
  if (chosen) return chosen === ':memory:' ? chosen : resolve(chosen);
  return join(envPaths('dwellwright', { suffix: '' }).data, 'store.db');
}
