import type { StyledRow } from '../chart/StyledRow.ts';
import { blockRows } from '../screen-shell/block-rows.ts';
import { listStart } from '../screen-shell/list-window.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';
import { tableRow } from '../screen-shell/table-row.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import { CYCLE_RESULT } from '../text/bonding-text.ts';
import { cycleFacts } from '../text/cycle-text.ts';
import { SHELL_TEXT } from '../text/home-text.ts';
import { neutralise } from '../text/neutralise.ts';
import { RECORDS_TEXT } from '../text/records-text.ts';
import { numberText, type TemperatureUnit } from '../text/units-text.ts';
import { cycleOf } from './cycles-head.ts';
import type { RecordsState } from './RecordsState.ts';
import { shownCycles } from './shown-cycles.ts';

/** Logged cycles of production, newest first. */
export function cyclesRows(state: RecordsState, size: PageSize): readonly StyledRow[] {
  const cycles = shownCycles(state);
  if (state.cycles === null) return [[], ...textRows(RECORDS_TEXT.readingCycles, size)];
  if (cycles.length === 0)
    return [
      [],
      ...textRows(state.cycles.length === 0 ? RECORDS_TEXT.noCycle : RECORDS_TEXT.noCycleSuch, size),
    ];
  const selected = state.view.kind === 'cycles' ? state.view.selected : 0;
  const room = size.rows - 3;
  const start = listStart(cycles.length, selected, room);
  return [
    [],
    row(RECORDS_TEXT.cycleHeadings, size, 'quiet', false),
    ...cycles.slice(start, start + room).map(({ cycle, when }, i) => {
      const further = cycle.flags.length - (cycle.result === 'done' ? 0 : 1);
      const words = [
        ...(cycle.simulated ? [SHELL_TEXT.simulated] : []),
        CYCLE_RESULT[cycle.result],
        ...(further > 0 ? [RECORDS_TEXT.andMore] : []),
      ];
      return row(
        [
          when,
          neutralise(cycle.assemblyName),
          neutralise(cycle.pressName),
          `${cycle.recipeVersion}`,
          `${numberText(cycle.dwellHeldS, 1)} s`,
          words.join(', '),
        ],
        size,
        start + i === selected ? 'key' : cycle.result === 'done' ? 'plain' : 'caution',
        start + i === selected,
      );
    }),
  ];
}

/** Result of one cycle in block letters, then every fact of it. */
export function cycleRows(state: RecordsState, unit: TemperatureUnit, size: PageSize): readonly StyledRow[] {
  const open = cycleOf(state);
  if (open === null) return [[], ...textRows(RECORDS_TEXT.noCycleSuch, size)];
  const { cycle, when } = open;
  const word = CYCLE_RESULT[cycle.result].toUpperCase();
  const wide = 15;
  return [
    [],
    ...blockRows(word, size, cycle.result === 'done' ? 'good' : 'caution'),
    [],
    ...cycleFacts(cycle, when, unit).flatMap(({ name, text, caution }) =>
      textRows(text, { ...size, columns: size.columns - wide }, caution ? 'caution' : 'plain').map(
        (line, i): StyledRow => [{ text: `  ${i === 0 ? name : ''}`.padEnd(wide), role: 'quiet' }, ...line],
      ),
    ),
  ];
}

function row(
  texts: readonly string[],
  { columns, ascii }: PageSize,
  role: 'quiet' | 'key' | 'plain' | 'caution',
  selected: boolean,
): StyledRow {
  const spare = Math.min(8, Math.max(0, Math.floor((columns - 80) / 4)));
  const fixed = [17, 8 + spare, 7 + spare, 7, 8];
  const rest = columns - 3 - fixed.reduce((sum, one) => sum + one + 1, 0) - 1;
  return [
    { text: selected ? ' > ' : '   ', role: 'strong' },
    ...tableRow(
      [...fixed, rest].map((width, i) => ({
        text: texts[i] ?? '',
        columns: width,
        right: i === 3 || i === 4,
      })),
      role,
      ascii,
    ),
  ];
}
