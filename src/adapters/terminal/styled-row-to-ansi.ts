import type { StyledRow } from '../../core/chart/StyledRow.ts';
import { COLOUR_STYLE, PLAIN_STYLE } from './role-styles.ts';

/** A row as terminal text; with `colour` false only weight, underline and reverse are used. */
export function styledRowToAnsi(row: StyledRow, colour: boolean): string {
  const styles = colour ? COLOUR_STYLE : PLAIN_STYLE;
  let text = '';
  for (const segment of row) {
    const style = styles[segment.role];
    text += style === '' ? segment.text : `\u001b[${style}m${segment.text}\u001b[0m`;
  }
  return text;
}
