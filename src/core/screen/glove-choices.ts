import type { StyledRow } from '../chart/StyledRow.ts';
import type { KeyHint } from '../text/keys-text.ts';

const KEY_COLUMNS = 9;

/** Choices for a gloved hand: one to a line, far apart where there is room, the key as a wide field. */
export function gloveChoices(choices: readonly KeyHint[], rows: number): readonly StyledRow[] {
  const apart = rows >= 2 * choices.length - 1;
  return choices.flatMap(({ key, does }, i): StyledRow[] => [
    ...(apart && i > 0 ? [[]] : []),
    [
      { text: '  ', role: 'plain' },
      { text: key.padStart(Math.floor((KEY_COLUMNS + key.length) / 2)).padEnd(KEY_COLUMNS), role: 'key' },
      { text: `  ${does}`, role: 'strong' },
    ],
  ]);
}
