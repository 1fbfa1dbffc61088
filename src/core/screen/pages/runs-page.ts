import { figuresLine, oneMoreLine } from '../../text/result-text.ts';
import { runDetails, runsTable } from '../runs-table.ts';
import type { TrialScreenState } from '../TrialScreenState.ts';
import type { DrawPage } from './PageSize.ts';
import { sentenceRows } from './page-rows.ts';

/** All runs as a table, everything said of the chosen one, and what they come to. */
export function runsPage(state: TrialScreenState): DrawPage {
  const { dialog } = state;
  const selected = dialog?.kind === 'runs' ? dialog.selected : dialog?.kind === 'decision' ? dialog.run : -1;
  const run = state.standing.runs[selected];
  const { statistics } = state.standing;
  return ({ columns, rows }) => {
    const figures = [figuresLine(statistics), oneMoreLine(statistics)].flatMap((line) =>
      line === null ? [] : sentenceRows(line, columns, 'strong'),
    );
    const details = run === undefined ? [] : runDetails(run, state, columns);
    const kept = details.slice(0, Math.max(3, rows - figures.length - 6));
    const room = rows - figures.length - kept.length - 2;
    return [
      ...runsTable(state, { columns, rows: Math.min(room, state.standing.runs.length + 1), selected }),
      [],
      ...kept,
      ...(kept.length > 0 ? [[]] : []),
      ...figures,
    ];
  };
}
