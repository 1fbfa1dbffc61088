import type { Segment, StyledRow } from '../chart/StyledRow.ts';
import { asciiText } from '../screen/ascii-text.ts';
import type { KeyHint } from '../text/keys-text.ts';

/** The keys that do something now, in as many rows as they need. */
export function keyRows(
  keys: readonly KeyHint[],
  { columns, ascii }: { readonly columns: number; readonly ascii: boolean },
): readonly StyledRow[] {
  const rows: Segment[][] = [[]];
  let used = 0;
  for (const hint of keys) {
    const key = ascii ? asciiText(hint.key) : hint.key;
    const does = ascii ? asciiText(hint.does) : hint.does;
    const width = key.length + does.length + 5;
    if (used + width > columns) {
      rows.push([]);
      used = 0;
    }
    rows
      .at(-1)
      ?.push(
        { text: ' ', role: 'plain' },
        { text: ` ${key} `, role: 'key' },
        { text: ` ${does} `, role: 'plain' },
      );
    used += width;
  }
  return rows;
}
