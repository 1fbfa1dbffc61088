import { fitRow } from '../chart/fit-row.ts';
import type { StyledRow } from '../chart/StyledRow.ts';
import { asciiText } from '../screen/ascii-text.ts';
import { wrapWords } from '../screen/wrap-words.ts';
import { SHELL_TEXT } from '../text/home-text.ts';
import { keyRows } from './key-rows.ts';
import type { ShellView } from './ShellView.ts';

const FEWEST_COLUMNS = 80;
const FEWEST_ROWS = 24;
/** A longer message is cut: it is a sentence or two. */
const MESSAGE_ROWS = 3;

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
  const { message } = view;
  const said = message === null ? [''] : wrapWords(words(message.text), columns - 2).slice(0, MESSAGE_ROWS);
  const room = height - 1 - said.length - foot.length - 1;
  const body = view.body({ columns, rows: room, ascii });
  const badge = view.badge === null ? '' : ` ${view.badge} `;
  const title = ` ${words(view.title)}`.slice(0, columns - badge.length - 2);
  return fill([
    [
      { text: title.padEnd(columns - badge.length - 1), role: 'strong' },
      { text: badge, role: 'flash' },
    ],
    ...Array.from({ length: room }, (_, i) => body[i] ?? []),
    ...said.map((text) => [{ text: ` ${text}`, role: message?.role ?? ('plain' as const) }]),
    ...foot,
    view.status.flatMap((part, i) => [
      { text: i === 0 ? ' ' : '  ', role: 'plain' as const },
      { text: words(part.text), role: part.role },
    ]),
  ]);
}
