import type { SegmentRole, StyledRow } from '../../chart/StyledRow.ts';
import type { ReadyItem } from '../../ready-check/ReadyCheck.ts';
import { isSettled } from '../../ready-check/ready-check.ts';
import {
  READY_GONE_ON,
  READY_PAGE,
  READY_STATE_WORD,
  READY_TITLE,
  readyWords,
} from '../../text/ready-text.ts';
import { cutAtWord } from '../cut-at-word.ts';
import { currentItem, readyItems } from '../ready-items.ts';
import type { TrialScreenState } from '../TrialScreenState.ts';
import type { DrawPage } from './PageSize.ts';
import { blockRows, sentenceRows } from './page-rows.ts';

/** Columns before what an item found. */
const BEFORE_FOUND = 26;

const ROLE: Readonly<Record<ReadyItem['state'], SegmentRole>> = {
  ready: 'good',
  wait: 'plain',
  ask: 'strong',
  'not-ready': 'caution',
  'not-checked': 'quiet',
};

/** The ready check: one word for all of it in block letters, a line for each item, and what to do about the chosen one. */
export function readyPage(state: TrialScreenState): DrawPage {
  const items = readyItems(state);
  const { dialog } = state;
  const selected =
    dialog?.kind === 'ready' ? dialog.selected : dialog?.kind === 'ready-reason' ? dialog.item : null;
  const current = currentItem(items, selected);
  const [word, wordRole] = overall(items);
  return ({ columns, rows, ascii }) => {
    const roomy = rows >= 28 && columns >= 110;
    const head = blockRows(word, roomy && !ascii ? 'large' : 'small', ascii, wordRole);
    const lines: StyledRow[] = [];
    for (const item of items) {
      const chosen = item.name === current?.name;
      const stands = item.overridden === null ? READY_STATE_WORD[item.state] : READY_GONE_ON;
      const { found } = readyWords(item, state.unit);
      lines.push([
        {
          text: `${chosen ? ' > ' : '   '}${stands.padEnd(8)}`,
          role: item.overridden === null ? ROLE[item.state] : 'caution',
        },
        {
          text: `${READY_TITLE[item.name].padEnd(13)} ${cutAtWord(found, columns - BEFORE_FOUND)}`,
          role: chosen ? 'strong' : item.state === 'not-checked' ? 'quiet' : 'plain',
        },
      ]);
      if (roomy) lines.push([]);
    }
    const todo = todoRows(state, items, current, columns);
    const gap: StyledRow[] = rows > head.length + lines.length + todo.length + 2 ? [[]] : [];
    return [...gap, ...head, ...gap, ...lines, ...(roomy ? [] : [[]]), ...todo];
  };
}

function overall(items: readonly ReadyItem[]): readonly [string, SegmentRole] {
  const open = items.filter((item) => !isSettled(item));
  const words = READY_PAGE.words;
  if (open.some((item) => item.state === 'not-ready')) return [words.no, 'caution'];
  if (open.some((item) => item.state === 'wait')) return [words.wait, 'plain'];
  return open.length > 0 ? [words.look, 'strong'] : [words.ready, 'good'];
}

function todoRows(
  state: TrialScreenState,
  items: readonly ReadyItem[],
  current: ReadyItem | null,
  columns: number,
): readonly StyledRow[] {
  if (items.every(isSettled)) return sentenceRows(READY_PAGE.settled, columns, 'good');
  if (current === null) return [];
  const { found, todo } = readyWords(current, state.unit);
  if (todo === '') return [];
  // What was cut above is said in full here.
  const whole = found.length > columns - BEFORE_FOUND ? `${found} ` : '';
  return sentenceRows(`${READY_TITLE[current.name]}: ${whole}${todo}`, columns, 'strong');
}
