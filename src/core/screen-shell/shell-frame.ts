import { fitRow } from '../chart/fit-row.ts';
import type { StyledRow } from '../chart/StyledRow.ts';
import { asciiText } from '../screen/ascii-text.ts';
import { wrapWords } from '../screen/wrap-words.ts';
import { SHELL_TEXT } from '../text/home-text.ts';
import { keyRows } from './key-rows.ts';
import type { ShellView } from './ShellView.ts';

const FEWEST_COLUMNS = 80;
const FEWEST_ROWS = 24;

export interface WindowOptions {
  /** Size of the window. */
  readonly columns: number;
  readonly rows: number;
  readonly ascii: boolean;
}

/** Lays a page out into exactly one row less than the window has, each as wide as the window. */
export function shellFrame(view: ShellView, { columns, rows, ascii }: WindowOptions): readonly StyledRow[] {
  const height = Math.max(1, rows - 1);
  const fill = (all: readonly StyledRow[]) =>
    Array.from({ length: height }, (_, i) => fitRow(all[i] ?? [], columns));
  const words = (text: string) => (ascii ? asciiText(text) : text);
  if (columns < FEWEST_COLUMNS || rows < FEWEST_ROWS) {
    const lines = wrapWords(words(SHELL_TEXT.tooSmall(columns, rows)), columns);
    return fill(lines.map((text) => [{ text, role: 'strong' }]));
  }
  const foot = keyRows(view.keys, { columns, ascii });
  const room = height - 1 - 1 - foot.length - 1;
  const body = view.body({ columns, rows: room, ascii });
  const badge = view.badge === null ? '' : ` ${view.badge} `;
  const title = ` ${words(view.title)}`.slice(0, columns - badge.length - 2);
  const { message } = view;
  return fill([
    [
      { text: title.padEnd(columns - badge.length - 1), role: 'strong' },
      { text: badge, role: 'flash' },
    ],
    ...Array.from({ length: room }, (_, i) => body[i] ?? []),
    message === null ? [] : [{ text: ` ${words(message.text)}`, role: message.role }],
    ...foot,
    view.status.flatMap((part, i) => [
      { text: i === 0 ? ' ' : '  ', role: 'plain' as const },
      { text: words(part.text), role: part.role },
    ]),
  ]);
}
