import { finite } from './finite.ts';

/** JSON of a value; a number that is not finite, which JSON would turn into null without a word, is refused by its key. */
export function toJson(value: unknown): string {
  return JSON.stringify(value, (key, part: unknown) => (typeof part === 'number' ? finite(key, part) : part));
}
