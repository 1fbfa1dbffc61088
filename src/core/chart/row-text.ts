import type { StyledRow } from './StyledRow.ts';

/** The row's characters without their roles. */
export function rowText(row: StyledRow): string {
  let text = '';
  for (const segment of row) text += segment.text;
  return text;
}
