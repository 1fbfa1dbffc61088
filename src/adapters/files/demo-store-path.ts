import { format, parse } from 'node:path';

const SUFFIX = '-demo';

/** The demo's own store, beside the real one: `store.db` gives `store-demo.db`, which gives itself. */
export function demoStorePath(realPath: string): string {
  const { dir, name, ext } = parse(realPath);
  if (realPath === ':memory:' || name.endsWith(SUFFIX)) return realPath;
  return format({ dir, name: `${name}${SUFFIX}`, ext });
}
