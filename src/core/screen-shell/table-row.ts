import type { SegmentRole, StyledRow } from '../chart/StyledRow.ts';
import { asciiText } from '../screen/ascii-text.ts';

export interface TableCell {
  readonly text: string;
  readonly columns: number;
  /** @default false */
  readonly right?: boolean;
  readonly role?: SegmentRole;
}

/** Cells of fixed widths side by side, one blank between; too long a text ends in "…" ("~" in ASCII), never in half a number. */
export function tableRow(cells: readonly TableCell[], role: SegmentRole, ascii: boolean): StyledRow {
  return cells.map((cell) => {
    const whole = ascii ? asciiText(cell.text) : cell.text;
    const width = Math.max(0, cell.columns);
    const text =
      whole.length <= width ? whole : `${begin(whole, Math.max(0, width - 1))}${ascii ? '~' : '…'}`;
    return {
      text: `${cell.right ? text.padStart(width) : text.padEnd(width)} `,
      role: cell.role ?? role,
    };
  });
}

/** The first `columns` of a text, without a number at the end that would stand without its unit. */
function begin(text: string, columns: number): string {
  return text.slice(0, columns).replace(/\s\(?\d[\d.]*\s?$/u, '');
}
