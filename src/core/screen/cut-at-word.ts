import { wrapWords } from './wrap-words.ts';

/** A sentence that fits, or its beginning up to a whole word with dots that say so. */
export function cutAtWord(text: string, columns: number): string {
  if (text.length <= columns) return text;
  return `${(wrapWords(text, Math.max(1, columns - 4))[0] ?? '').trimEnd()} ...`;
}
