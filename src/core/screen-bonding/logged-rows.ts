import type { BondingState } from '../bonding/BondingState.ts';
import type { StyledRow } from '../chart/StyledRow.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import { BONDING_TEXT, cycleWords } from '../text/bonding-text.ts';

/** Cycles logged since the start, the latest first, as many as there is room for. */
export function loggedRows(state: BondingState, size: PageSize, room: number): readonly StyledRow[] {
  const lines = [...state.logged]
    .reverse()
    .slice(0, room - 1)
    .map((cycle, i) => ({
      text: `${state.logged.length - i}: ${cycleWords(cycle)}`,
      role: cycle.result === 'done' ? ('plain' as const) : ('caution' as const),
    }));
  const head = state.logged.length === 0 ? BONDING_TEXT.none : BONDING_TEXT.cycles(state.logged.length);
  return [
    ...textRows(head, size, 'quiet'),
    ...lines.flatMap(({ text, role }) => [...textRows(text, size, role).slice(0, 1)]),
  ];
}
