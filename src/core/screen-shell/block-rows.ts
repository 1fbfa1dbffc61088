import { type BlockSize, blockText, blockTextColumns } from '../chart/block-text.ts';
import type { SegmentRole, StyledRow } from '../chart/StyledRow.ts';
import type { PageSize } from './ShellView.ts';

/** Words in block letters as rows, margin two; in plain letters where they are too wide or a letter has no picture. */
export function blockRows(
  words: string,
  { columns, ascii }: Pick<PageSize, 'columns' | 'ascii'>,
  role: SegmentRole = 'strong',
  size: BlockSize = 'small',
): readonly StyledRow[] {
  if (blockTextColumns(words, size) > columns - 4) return [[{ text: `  ${words}`, role }]];
  return blockText(words, { size, ascii }).map((row) => [{ text: `  ${row}`, role }]);
}
