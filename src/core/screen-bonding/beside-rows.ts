import { type BlockSize, blockText } from '../chart/block-text.ts';
import type { Segment, SegmentRole, StyledRow } from '../chart/StyledRow.ts';
import { asciiText } from '../screen/ascii-text.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';

/** A piece of block letters, with what stands small beside it (a unit). */
export interface BlockPiece {
  readonly text: string;
  readonly role: SegmentRole;
  readonly faded?: boolean;
  /** In small letters behind it: a large S would pass for a 5. */
  readonly unit?: string;
}

const MARGIN = 2;
/** Columns between two pieces, where there is room and where not. */
const APART = [6, 3] as const;

/**
 * Two pieces of block letters side by side, the right one beginning at the same column whatever the left one is (further
 * right where the left one needs it), in the largest of `sizes` that fits; the right one smaller where it alone is too wide.
 * Null: not even the smallest fits.
 */
export function besideRows(
  left: BlockPiece,
  right: BlockPiece | null,
  { columns, ascii }: Pick<PageSize, 'columns' | 'ascii'>,
  sizes: readonly BlockSize[],
): readonly StyledRow[] | null {
  const half = Math.floor(columns / 2);
  for (const size of sizes) {
    const first = drawn(left, size, ascii);
    if (MARGIN + widthOf(first) > columns) continue;
    if (right === null) return joined(first, left, [], null, 0);
    for (const apart of APART)
      for (const smaller of sizes.slice(sizes.indexOf(size))) {
        const second = drawn(right, smaller, ascii);
        const gap = Math.max(half - MARGIN, widthOf(first) + apart);
        if (MARGIN + gap + widthOf(second) <= columns) return joined(first, left, second, right, gap);
      }
  }
  return null;
}

/** Two short sentences under two pieces, the right one at the same column. */
export function besideCaptions(
  left: string,
  right: string | null,
  { columns, ascii }: Pick<PageSize, 'columns' | 'ascii'>,
): StyledRow {
  const half = Math.floor(columns / 2);
  const plain = (text: string) => (ascii ? asciiText(text) : text);
  if (right === null) return [{ text: `  ${plain(left)}`, role: 'quiet' }];
  return [
    { text: `  ${plain(left).slice(0, half - 4)}`.padEnd(half), role: 'quiet' },
    { text: plain(right), role: 'quiet' },
  ];
}

const widthOf = (rows: readonly string[]): number => rows[0]?.length ?? 0;

function drawn(
  { text, faded = false, unit }: BlockPiece,
  size: BlockSize,
  ascii: boolean,
): readonly string[] {
  const rows = blockText(text, { size, ascii, faded });
  if (unit === undefined) return rows;
  const small = blockText(unit, { size: 'small', ascii });
  const blank = ' '.repeat(widthOf(small));
  return rows.map((row, i) => `${row}  ${small[i] ?? blank}`);
}

function joined(
  first: readonly string[],
  left: BlockPiece,
  second: readonly string[],
  right: BlockPiece | null,
  gap: number,
): readonly StyledRow[] {
  return Array.from({ length: Math.max(first.length, second.length) }, (_, i) => {
    const row: Segment[] = [
      { text: ' '.repeat(MARGIN), role: 'plain' },
      { text: first[i] ?? '', role: left.role },
    ];
    if (right !== null) {
      row.push({ text: ' '.repeat(gap - (first[i]?.length ?? 0)), role: 'plain' });
      row.push({ text: second[i] ?? '', role: right.role });
    }
    return row;
  });
}
