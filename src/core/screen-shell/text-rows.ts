import type { SegmentRole, StyledRow } from '../chart/StyledRow.ts';
import { asciiText } from '../screen/ascii-text.ts';
import { wrapWords } from '../screen/wrap-words.ts';
import type { PageSize } from './ShellView.ts';

/** A sentence as rows, wrapped inside the page with a margin of two (or `indent`) columns. */
export function textRows(
  text: string,
  { columns, ascii }: Pick<PageSize, 'columns' | 'ascii'>,
  role: SegmentRole = 'plain',
  indent = 2,
): readonly StyledRow[] {
  if (text === '') return [[]];
  const plain = ascii ? asciiText(text) : text;
  return wrapWords(plain, columns - indent - 2).map((line) => [
    { text: `${' '.repeat(indent)}${line}`, role },
  ]);
}
