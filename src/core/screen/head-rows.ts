import { type BlockSize, blockText, blockTextColumns } from '../chart/block-text.ts';
import { fitRow } from '../chart/fit-row.ts';
import type { SegmentRole, StyledRow } from '../chart/StyledRow.ts';
import type { TrialView, ViewLine } from './TrialView.ts';
import { wrapWords } from './wrap-words.ts';

export interface Head {
  readonly head: readonly StyledRow[];
  /** A fact that found no room: a caution where there is one, else the first. */
  readonly overflow: ViewLine | null;
}

/**
 * Figure on the left; on the right state word and next action in block letters, then facts. 9 rows, 12 in a window of
 * 32 rows and 110 columns; in ASCII 11, whose letters are higher.
 */
export function headRows(view: TrialView): Head {
  const roomy = view.rows >= 31 && view.columns >= 110;
  // Between runs the table needs the row more than a fact that stands in it too.
  const inAscii = view.between && view.rows < 31 ? 10 : 11;
  const height = roomy ? 12 : view.ascii ? inAscii : 9;
  const left = roomy && !view.ascii ? 54 : 34;
  const figure = figureRows(view, roomy && !view.ascii ? 'big' : 'large', height);
  const { rows: right, overflow } = stateRows(view, view.columns - left - 1, height, roomy);
  const head = Array.from({ length: height }, (_, i) => [
    ...fitRow(figure[i] ?? [], left),
    ...(right[i] ?? []),
  ]);
  return { head, overflow };
}

function figureRows(view: TrialView, size: BlockSize, height: number): readonly StyledRow[] {
  const { text, unit, faded, caption, below = '' } = view.figure;
  const role: SegmentRole = faded ? 'quiet' : 'strong';
  const digits = blockText(text, { size, ascii: view.ascii, faded });
  const letters = unit === '' ? [] : blockText(unit, { size: 'small', ascii: view.ascii, faded });
  const rows: StyledRow[] = digits.map((row, i) => [{ text: ` ${row}  ${letters[i] ?? ''}`, role }]);
  const above = Math.max(0, Math.floor((height - digits.length - 2) / 2));
  for (let i = 0; i < above; i++) rows.unshift([]);
  rows.push([], [{ text: ` ${caption}`, role: faded ? 'quiet' : 'plain' }]);
  if (below !== '') rows.push([{ text: ` ${below}`, role: faded ? 'quiet' : 'plain' }]);
  return rows;
}

function stateRows(
  view: TrialView,
  columns: number,
  height: number,
  roomy: boolean,
): { readonly rows: readonly StyledRow[]; readonly overflow: ViewLine | null } {
  const { words, role, flash } = view.state;
  const large =
    roomy && !view.ascii && words.length === 1 && blockTextColumns(words[0] ?? '', 'large') <= columns;
  // In ASCII a block word takes five rows: without room for two, the second goes in plain letters.
  const block = view.ascii ? words.slice(0, 1) : words;
  const rows: StyledRow[] = [];
  for (const word of block) {
    for (const row of blockText(word, { size: large ? 'large' : 'small', ascii: view.ascii })) {
      rows.push([{ text: flash ? ` ${row} ` : ` ${row}`, role: flash ? 'flash' : role }]);
    }
  }
  if (block.length < words.length) rows.push([{ text: ` ${words.slice(block.length).join(' ')}`, role }]);
  for (const row of blockText(view.next, { size: 'small', ascii: view.ascii }))
    rows.push([{ text: ` ${row}`, role: 'plain' }]);
  const left: ViewLine[] = [];
  for (const fact of view.facts) {
    const texts = wrapWords(fact.text, columns - 1);
    if (rows.length + texts.length > height) left.push(fact);
    else for (const text of texts) rows.push([{ text: ` ${text}`, role: fact.role }]);
  }
  const overflow = left.find(({ role }) => role === 'fault' || role === 'caution') ?? left[0] ?? null;
  return { rows: rows.slice(0, height), overflow };
}
