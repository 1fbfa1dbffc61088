import type { StyledRow } from '../chart/StyledRow.ts';
import { listStart } from '../screen-shell/list-window.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';
import { type TableCell, tableRow } from '../screen-shell/table-row.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import { SHELL_TEXT } from '../text/home-text.ts';
import { RECORDS_TEXT } from '../text/records-text.ts';
import { numberText } from '../text/units-text.ts';
import type { RecordsState } from './RecordsState.ts';

/** Every trial of the store, newest first, with its runs and mean soak time. */
export function trialsRows(state: RecordsState, size: PageSize): readonly StyledRow[] {
  const { trials, view } = state;
  if (trials.length === 0) return [[], ...textRows(RECORDS_TEXT.noTrial, size)];
  const selected = view.kind === 'trials' ? view.selected : 0;
  const room = size.rows - 3;
  const start = listStart(trials.length, selected, room);
  return [
    [],
    row(RECORDS_TEXT.trialHeadings, size, 'quiet', false),
    ...trials
      .slice(start, start + room)
      .map((trial, i) =>
        row(
          [
            trial.when,
            trial.assemblyName,
            trial.pressName,
            `${trial.runs}`,
            `${trial.countingRuns}`,
            trial.meanSoakS === null ? '—' : `${numberText(trial.meanSoakS, 2)} s`,
            [trial.closedAt === null ? RECORDS_TEXT.open : '', trial.simulated ? SHELL_TEXT.simulated : '']
              .filter(Boolean)
              .join(', '),
          ],
          size,
          start + i === selected ? 'key' : 'plain',
          start + i === selected,
        ),
      ),
  ];
}

function row(
  cells: readonly string[],
  { columns, ascii }: PageSize,
  role: 'quiet' | 'key' | 'plain',
  selected: boolean,
): StyledRow {
  const spare = Math.min(10, Math.max(0, Math.floor((columns - 80) / 2)));
  const widths = [17, 13 + spare, 9 + spare, 4, 5, 9, 12];
  const table: readonly TableCell[] = widths.map((width, i) => ({
    text: cells[i] ?? '',
    columns: width,
    right: i >= 3 && i <= 5,
  }));
  return [{ text: selected ? ' > ' : '   ', role: 'strong' }, ...tableRow(table, role, ascii)];
}
