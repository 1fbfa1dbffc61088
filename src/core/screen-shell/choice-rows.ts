import type { StyledRow } from '../chart/StyledRow.ts';
import type { PageSize } from './ShellView.ts';
import { tableRow } from './table-row.ts';

export interface ShownChoice {
  readonly key: string;
  readonly word: string;
  readonly detail: string;
  /** Taken by Enter. */
  readonly first: boolean;
}

/** Choices one under the other, each with its key in reverse, a row apart while there is room. */
export function choiceRows(
  choices: readonly ShownChoice[],
  size: PageSize,
  wordColumns = 26,
): readonly StyledRow[] {
  const apart = choices.length * 2 - 1 <= size.rows;
  return choices.flatMap((choice, i) => {
    const row: StyledRow = [
      { text: choice.first ? (size.ascii ? ' > ' : ' ▸ ') : '   ', role: 'strong' },
      ...tableRow([{ text: ` ${choice.key.toUpperCase()}`, columns: 3, role: 'key' }], 'key', size.ascii).map(
        (segment) => ({ ...segment, text: segment.text.slice(0, -1) }),
      ),
      { text: '  ', role: 'plain' },
      ...tableRow(
        [
          { text: choice.word, columns: wordColumns, role: choice.first ? 'strong' : 'plain' },
          { text: choice.detail, columns: size.columns - wordColumns - 10, role: 'quiet' },
        ],
        'plain',
        size.ascii,
      ),
    ];
    return apart && i > 0 ? [[], row] : [row];
  });
}
