import type { Segment, StyledRow } from '../chart/StyledRow.ts';
import { RUN_FACTS } from '../text/run-facts-text.ts';
import type { TrialView } from './TrialView.ts';

const NARROW = [3, 7, 7, 9];
const WIDE = [3, 8, 8, 10, 12];

/** The runs so far as a table with mean and spread below; the latest runs when room is short. */
export function runsPanel(view: TrialView, columns: number, room: number): readonly StyledRow[] {
  const widths = columns >= 44 ? WIDE : NARROW;
  const rows: StyledRow[] = [[{ text: ` ${cellsText(view.runHeadings, widths)}`, role: 'quiet' }]];
  const most = Math.max(1, room - 1 - view.summary.length);
  const chosen = view.runs.findIndex((run) => run.selected);
  const last = chosen >= 0 ? Math.max(Math.min(view.runs.length, most), chosen + 1) : view.runs.length;
  for (const run of view.runs.slice(Math.max(0, last - most), last)) {
    const pointer = run.selected ? '>' : ' ';
    const segment: Segment = {
      text: `${pointer}${cellsText(run.cells, widths)}`,
      role: run.selected ? 'key' : run.role,
    };
    rows.push([segment]);
  }
  if (view.runs.length === 0) rows.push([{ text: ` ${RUN_FACTS.noRun}`, role: 'quiet' }]);
  while (rows.length < room - view.summary.length && rows.length < 7) rows.push([]);
  for (const text of view.summary) rows.push([{ text: ` ${text}`, role: 'strong' }]);
  return rows;
}

function cellsText(cells: readonly string[], widths: readonly number[]): string {
  return widths
    .map((width, i) =>
      i === 3 ? ` ${(cells[i] ?? '').padEnd(width - 1)}` : (cells[i] ?? '').padStart(width),
    )
    .join('');
}
