import type { Content } from 'pdfmake/interfaces.js';

/** Words longer than this may be broken anywhere; all others only where words break. */
const LONGEST_WORD = 30;
const LONG_WORD = new RegExp(`(\\S{${LONGEST_WORD + 1},})`, 'u');

/** A text whose very long words (codes, names without a space) break at the margin in place of running over it. */
export function breakable(text: string): string | Content[] {
  if (!LONG_WORD.test(text)) return text;
  return text
    .split(LONG_WORD)
    .filter((part) => part !== '')
    .map(
      (part): Content =>
        part.length > LONGEST_WORD && !/\s/u.test(part)
          ? { text: part, wordBreak: 'break-all' }
          : { text: part },
    );
}
