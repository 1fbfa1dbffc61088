import { type BlockSize, blockText } from '../../chart/block-text.ts';
import type { SegmentRole, StyledRow } from '../../chart/StyledRow.ts';
import { wrapWords } from '../wrap-words.ts';

/** A sentence in as many rows as it needs, further rows set in by two. */
export function sentenceRows(
  text: string,
  columns: number,
  role: SegmentRole = 'plain',
): readonly StyledRow[] {
  const before = text.length - text.trimStart().length;
  return wrapWords(text.trimStart(), columns - before - 4).map((words, i) => [
    { text: ` ${' '.repeat(before + (i === 0 ? 0 : 2))}${words}`, role },
  ]);
}

/** Block letters as rows. */
export function blockRows(
  words: string,
  size: BlockSize,
  ascii: boolean,
  role: SegmentRole,
): readonly StyledRow[] {
  return blockText(words, { size, ascii }).map((text) => [{ text: ` ${text}`, role }]);
}

/** Two stacks of rows side by side, the first `leftColumns` wide. */
export function sideBySide(
  left: readonly StyledRow[],
  right: readonly StyledRow[],
  leftColumns: number,
): readonly StyledRow[] {
  return Array.from({ length: Math.max(left.length, right.length) }, (_, i) => {
    const row = left[i] ?? [];
    const used = row.reduce((sum, segment) => sum + segment.text.length, 0);
    const gap = { text: ' '.repeat(Math.max(1, leftColumns - used)), role: 'plain' as const };
    return [...row, gap, ...(right[i] ?? [])];
  });
}
