import type { Segment, SegmentRole, StyledRow } from './StyledRow.ts';

/** A grid of single characters with a role each, turned into rows of segments at the end. */
export function createCells(columns: number, rows: number) {
  const text: string[] = new Array(columns * rows).fill(' ');
  const roles: SegmentRole[] = new Array(columns * rows).fill('plain');
  const put = (column: number, row: number, character: string, role: SegmentRole) => {
    if (column < 0 || row < 0 || column >= columns || row >= rows) return;
    text[row * columns + column] = character;
    roles[row * columns + column] = role;
  };
  return {
    put,
    write(column: number, row: number, words: string, role: SegmentRole) {
      for (let i = 0; i < words.length; i++) put(column + i, row, words[i] ?? ' ', role);
    },
    toRows(): readonly StyledRow[] {
      const result: StyledRow[] = [];
      for (let row = 0; row < rows; row++) result.push(segmentsOf(row));
      return result;
    },
  };

  function segmentsOf(row: number): StyledRow {
    const segments: Segment[] = [];
    let start = row * columns;
    const end = start + columns;
    for (let i = start + 1; i <= end; i++) {
      if (i === end || roles[i] !== roles[start]) {
        segments.push({ text: text.slice(start, i).join(''), role: roles[start] ?? 'plain' });
        start = i;
      }
    }
    return segments;
  }
}
