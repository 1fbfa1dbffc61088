import type { StyledRow } from '../../core/chart/StyledRow.ts';
import { COLOUR_STYLE, PLAIN_STYLE } from './role-styles.ts';

/** A row as terminal text; with `colour` false only weight, underline and reverse are used. */
export function styledRowToAnsi(row: StyledRow, colour: boolean): string {
  const styles = colour ? COLOUR_STYLE : PLAIN_STYLE;
  let text = '';
  for (const segment of withoutEndBlanks(row)) {
    const style = styles[segment.role];
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
