import { fitRow } from '../chart/fit-row.ts';
import type { StyledRow } from '../chart/StyledRow.ts';
import { blockRows } from '../screen-shell/block-rows.ts';
import { choiceRows } from '../screen-shell/choice-rows.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import type { HomeState } from './HomeState.ts';
import { homeMenu } from './home-menu.ts';
import { knownRows } from './known-rows.ts';
import { nextStep } from './next-step.ts';

const LEFT_COLUMNS = 37;
/** The key in front of the sentence, blanks included. */
const KEY_COLUMNS = 9;
const WIDE_LEFT_COLUMNS = 44;

/** The next thing in large letters, below it the ways on (left) and what the store knows (right). */
export function homeRows(state: HomeState, size: PageSize): readonly StyledRow[] {
  const step = nextStep(state.facts, state.plan);
  const caution = step.kind === 'go-on' || step.kind === 'plug-in';
  const roomy = size.rows >= 28 && size.columns >= 110;
  const top: readonly StyledRow[] = [
    ...(roomy || size.rows - 6 > homeMenu(state.facts).length * 2 ? [[]] : []),
    ...blockRows(step.word, size, caution ? 'caution' : 'strong', roomy ? 'large' : 'small'),
    ...(roomy ? [[]] : []),
    ...withKey(textRows(step.sentence, { ...size, columns: size.columns - KEY_COLUMNS }, 'plain', 1)),
    rule(size),
  ];
  const left = size.columns >= 110 ? WIDE_LEFT_COLUMNS : LEFT_COLUMNS;
  const rows = size.rows - top.length;
  const menu = choiceRows(
    homeMenu(state.facts).map((entry) => ({ ...entry, first: false })),
    { columns: left, rows, ascii: size.ascii },
    size.columns >= 110 ? 11 : 9,
  );
  const known = knownRows(state, { columns: size.columns - left - 2, rows, ascii: size.ascii });
  const count = Math.min(rows, Math.max(menu.length, known.length));
  return [
    ...top,
    ...Array.from({ length: count }, (_, i) => [
      ...fitRow(menu[i] ?? [], left),
      { text: size.ascii ? '| ' : '│ ', role: 'axis' as const },
      ...(known[i] ?? []),
    ]),
  ];
}

function rule({ columns, ascii }: PageSize): StyledRow {
  return [{ text: (ascii ? '-' : '─').repeat(columns), role: 'axis' }];
}

/** The sentence with the key that does it in front. */
function withKey(rows: readonly StyledRow[]): readonly StyledRow[] {
  return rows.map((row, i) => [
    { text: '  ', role: 'plain' },
    i === 0 ? { text: ' Enter ', role: 'key' } : { text: ' '.repeat(KEY_COLUMNS - 2), role: 'plain' },
    ...row,
  ]);
}
