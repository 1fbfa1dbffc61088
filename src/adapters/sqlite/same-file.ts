import { statSync } from 'node:fs';

/**
 * Whether two names are one file: also by a link of either kind. Opened under two names, a store would get two logs beside
 * it, and be damaged.
 */
export function sameFile(one: string, two: string): boolean {
  const [first, second] = [one, two].map((path) => statSync(path, { bigint: true, throwIfNoEntry: false }));
  return first !== undefined && second !== undefined && first.dev === second.dev && first.ino === second.ino;
}
