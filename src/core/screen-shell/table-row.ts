import type { SegmentRole, StyledRow } from '../chart/StyledRow.ts';
import { asciiText } from '../screen/ascii-text.ts';

export interface TableCell {
  readonly text: string;
  readonly columns: number;
  /** @default false */
  readonly right?: boolean;
  readonly role?: SegmentRole;
}

/** Cells of fixed widths side by side, one blank between; too long a text ends in "…" ("~" in ASCII). */
export function tableRow(cells: readonly TableCell[], role: SegmentRole, ascii: boolean): StyledRow {
  return cells.map((cell) => {
    const whole = ascii ? asciiText(cell.text) : cell.text;
    const width = Math.max(0, cell.columns);
    const text =
      whole.length <= width ? whole : `${whole.slice(0, Math.max(0, width - 1))}${ascii ? '~' : '…'}`;
    return {
      text: `${cell.right ? text.padStart(width) : text.padEnd(width)} `,
      role: cell.role ?? role,
    };
  });
}
