import type { StyledRow } from '../../chart/StyledRow.ts';
import { CAUTIONS } from '../../text/cautions.ts';
import { TRIAL_HELP } from '../../text/trial-help-text.ts';
import { asciiText } from '../ascii-text.ts';
import { wrapWords } from '../wrap-words.ts';
import type { DrawPage } from './PageSize.ts';
import { sentenceRows, sideBySide } from './page-rows.ts';

/** Columns before what a key does, with the longest key. */
const BEFORE = 9;

/**
 * Full help: every key, what the screen shows, and that the program is no safety device. Keys told in a few words stand two
 * in a row, below the others, so that all of it fits 80 × 24.
 */
export function helpPage(scroll = 0): DrawPage {
  return ({ columns, rows, ascii }) => {
    const half = Math.floor(columns / 2);
    const [short, long]: (readonly StyledRow[])[][] = [[], []];
    for (const [key, does] of TRIAL_HELP.keys) {
      const fits = does.length + BEFORE < half;
      (fits ? short : long)?.push(keyRows(key, ascii ? asciiText(does) : does, columns));
    }
    const pairs = (short ?? []).flatMap((left, i, all) =>
      i % 2 === 0 ? sideBySide(left, all[i + 1] ?? [], half) : [],
    );
    const all = [
      ...(long ?? []).flat(),
      ...pairs,
      [],
      ...CAUTIONS['not-a-safety-device'].slice(0, 1).flatMap((line) => sentenceRows(line, columns, 'strong')),
      ...TRIAL_HELP.seen.flatMap((line) => sentenceRows(line, columns, 'quiet')),
    ];
    return windowOf(all, rows, scroll);
  };
}

/** The rows that the window holds, and which they are where it does not hold all. */
function windowOf(all: readonly StyledRow[], rows: number, scroll: number): readonly StyledRow[] {
  if (all.length <= rows) return all;
  const room = rows - 1;
  const first = Math.min(scroll, all.length - room);
  const where = first + room < all.length ? TRIAL_HELP.below : TRIAL_HELP.above;
  return [...all.slice(first, first + room), [{ text: ` ${where}`, role: 'strong' }]];
}

function keyRows(key: string, does: string, columns: number): readonly StyledRow[] {
  return wrapWords(does, columns - BEFORE - 1).map((words, i) => [
    { text: ' ', role: 'plain' },
    i === 0 ? { text: ` ${key} `, role: 'key' } : { text: '', role: 'plain' },
    { text: `${' '.repeat(BEFORE - 1 - (i === 0 ? key.length + 2 : 0))}${words}`, role: 'plain' },
  ]);
}
