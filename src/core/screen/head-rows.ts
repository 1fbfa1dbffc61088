import { type BlockSize, blockText, blockTextColumns } from '../chart/block-text.ts';
import { fitRow } from '../chart/fit-row.ts';
import type { SegmentRole, StyledRow } from '../chart/StyledRow.ts';
import type { TrialView } from './TrialView.ts';
import { wrapWords } from './wrap-words.ts';

/** Figure on the left, state word and facts on the right. 7 rows; 10 in a window of 32 rows and 110 columns. */
export function headRows(view: TrialView): readonly StyledRow[] {
  const roomy = view.rows >= 31 && view.columns >= 110 && !view.ascii;
  const height = roomy ? 10 : 7;
  const left = roomy ? 54 : 34;
  const figure = figureRows(view, roomy ? 'big' : 'large', height);
  const right = stateRows(view, view.columns - left - 1, height, roomy);
  return Array.from({ length: height }, (_, i) => [...fitRow(figure[i] ?? [], left), ...(right[i] ?? [])]);
}

function figureRows(view: TrialView, size: BlockSize, height: number): readonly StyledRow[] {
  const { text, unit, faded, caption } = view.figure;
  const role: SegmentRole = faded ? 'quiet' : 'strong';
  const digits = blockText(text, { size, ascii: view.ascii, faded });
  const letters =
    unit === '' ? [] : blockText(unit, { size: view.ascii ? 'small' : 'small', ascii: view.ascii, faded });
  const rows: StyledRow[] = digits.map((row, i) => [{ text: ` ${row}  ${letters[i] ?? ''}`, role }]);
  if (rows.length < height - 1) rows.unshift([]);
  rows.push([{ text: ` ${caption}`, role: faded ? 'quiet' : 'plain' }]);
  return rows;
}

function stateRows(view: TrialView, columns: number, height: number, roomy: boolean): readonly StyledRow[] {
  const { words, role, flash } = view.state;
  const rows: StyledRow[] = [];
  const large = roomy && words.length === 1 && blockTextColumns(words[0] ?? '', 'large') <= columns;
  for (const word of words) {
    for (const row of blockText(word, { size: large ? 'large' : 'small', ascii: view.ascii })) {
      rows.push([{ text: flash ? ` ${row} ` : ` ${row}`, role: flash ? 'flash' : role }]);
    }
  }
  for (const fact of view.facts) {
    for (const text of wrapWords(fact.text, columns - 1)) rows.push([{ text: ` ${text}`, role: fact.role }]);
  }
  return rows.slice(0, height);
}
