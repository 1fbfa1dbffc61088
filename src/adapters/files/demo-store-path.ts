import { format, parse } from 'node:path';

const SUFFIX = '-demo';

/** The demo's own store, beside the real one: `store.db` gives `store-demo.db`, which gives itself. */
export function demoStorePath(realPath: string): string {
  if (realPath === ':memory:' || isDemoStore(realPath)) return realPath;
  const { dir, name, ext } = parse(realPath);
  return format({ dir, name: `${name}${SUFFIX}`, ext });
}

/** Whether a store's file is one of the demo's own. */
export const isDemoStore = (path: string): boolean => parse(path).name.endsWith(SUFFIX);
