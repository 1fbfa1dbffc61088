import type { StyledRow } from '../../chart/StyledRow.ts';

/** Room a page may fill. */
export interface PageSize {
  readonly columns: number;
  readonly rows: number;
  readonly ascii: boolean;
}

/** Draws a page; rows beyond the room are cut. */
export type DrawPage = (size: PageSize) => readonly StyledRow[];
