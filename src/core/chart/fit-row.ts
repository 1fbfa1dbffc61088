import type { Segment, StyledRow } from './StyledRow.ts';

/** The row cut or filled with blanks to exactly `columns` characters. */
export function fitRow(row: StyledRow, columns: number): StyledRow {
  const fitted: Segment[] = [];
  let used = 0;
  for (const segment of row) {
    if (used >= columns) break;
    const text = segment.text.length > columns - used ? segment.text.slice(0, columns - used) : segment.text;
    if (text.length > 0) fitted.push(text === segment.text ? segment : { text, role: segment.role });
    used += text.length;
  }
  if (used < columns) fitted.push({ text: ' '.repeat(columns - used), role: 'plain' });
  return fitted;
}
