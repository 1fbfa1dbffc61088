import type { StyledRow } from '../../core/chart/StyledRow.ts';
import { type Colours, roleStyle } from './palette.ts';

/** A row as terminal text in as many colours as there are; with none only weight, underline and reverse are used. */
export function styledRowToAnsi(row: StyledRow, colours: Colours): string {
  let text = '';
  for (const segment of withoutEndBlanks(row)) {
    const style = roleStyle(segment.role, colours);
    text += style === '' ? segment.text : `\u001b[${style}m${segment.text}\u001b[0m`;
  }
  return text;
}

/** Blanks at the end cost as much to draw as letters and show nothing. */
function withoutEndBlanks(row: StyledRow): StyledRow {
  const last = row.at(-1);
  if (last === undefined || last.role !== 'plain') return row;
  const text = last.text.trimEnd();
  if (text === last.text) return row;
  const rest = row.slice(0, -1);
  return text === '' ? withoutEndBlanks(rest) : [...rest, { text, role: last.role }];
}
