import type { StyledRow } from '../chart/StyledRow.ts';
import { listStart } from '../screen-shell/list-window.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';
import { tableRow } from '../screen-shell/table-row.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import { LEFT_OUT_WHY } from '../text/left-out-text.ts';
import { neutralise } from '../text/neutralise.ts';
import { RECORDS_TEXT } from '../text/records-text.ts';
import { RUN_FACTS } from '../text/run-facts-text.ts';
import { runReasonText } from '../text/run-reasons.ts';
import { numberText, type TemperatureUnit, temperatureField } from '../text/units-text.ts';
import type { TrialRun } from '../trial/TrialResult.ts';
import type { RecordsState } from './RecordsState.ts';
import { runsOf } from './RecordsStep.ts';

type TrialView = Extract<RecordsState['view'], { readonly kind: 'trial' }>;

/** One trial: its runs, what is said of the chosen one, mean, spread and dwell. */
export function trialRows(
  state: RecordsState,
  view: TrialView,
  unit: TemperatureUnit,
  size: PageSize,
): readonly StyledRow[] {
  const runs = runsOf(state);
  const { outcome } = state.loaded ?? {};
  if (outcome === undefined || runs.length === 0) return [[], ...textRows(RECORDS_TEXT.noRun, size)];
  const figures = (state.loaded?.figures ?? []).flatMap((line) => textRows(line, size, 'strong'));
  const picked =
    view.picked.length === 0
      ? []
      : textRows(RECORDS_TEXT.picked(view.picked.map((run) => run + 1).join(', ')), size, 'quiet');
  const said = sayings(runs[view.selected], outcome.leftOut[view.selected] ?? null, unit).flatMap((line) =>
    textRows(line, size, 'plain', 4),
  );
  const fixed = 4 + figures.length + picked.length;
  const room = Math.max(3, Math.min(runs.length, size.rows - fixed - Math.min(said.length, 4)));
  const start = listStart(runs.length, view.selected, room);
  return [
    [],
    row(RECORDS_TEXT.runHeadings, size, { role: 'quiet', selected: false }),
    ...runs.slice(start, start + room).map((run, i) =>
      row(cells(run, start + i, view, outcome.leftOut[start + i] ?? null, unit), size, {
        role: start + i === view.selected ? 'key' : outcome.leftOut[start + i] === null ? 'plain' : 'quiet',
        selected: start + i === view.selected,
      }),
    ),
    ...picked,
    [],
    ...said.slice(0, Math.max(1, size.rows - fixed - room)),
    [],
    ...figures,
  ];
}

type Left = keyof typeof LEFT_OUT_WHY | null;

function cells(
  run: TrialRun,
  index: number,
  view: TrialView,
  left: Left,
  unit: TemperatureUnit,
): readonly string[] {
  const { result, decision } = run;
  const factor = unit === 'F' ? 1.8 : 1;
  const first = result.reasons[0];
  const why =
    decision.kind !== 'automatic'
      ? decision.reason
      : first === undefined
        ? ''
        : first.code.replaceAll('-', ' ');
  return [
    view.picked.includes(index) ? '*' : '',
    `${index + 1}`,
    result.soakTimeS === null ? '—' : `${numberText(result.soakTimeS, 2)} s`,
    result.startC === null ? '—' : temperatureField(result.startC, unit, 0).trim(),
    result.crossing === null ? '—' : `${numberText(result.crossing.slopeCPerS * factor, 2)} °${unit}/s`,
    decision.kind === 'automatic'
      ? result.verdict
      : decision.kind === 'set-aside'
        ? RUN_FACTS.setAside
        : RUN_FACTS.takenIn,
    left === null && why === '' ? RECORDS_TEXT.counts : neutralise(why),
  ];
}

function row(
  texts: readonly string[],
  { columns, ascii }: PageSize,
  { role, selected }: { readonly role: 'quiet' | 'key' | 'plain'; readonly selected: boolean },
): StyledRow {
  const widths = [1, 3, 9, 7, 10, 10, columns - 52];
  return [
    { text: selected ? ' > ' : '   ', role: 'strong' },
    ...tableRow(
      widths.map((width, i) => ({ text: texts[i] ?? '', columns: width, right: i >= 1 && i <= 4 })),
      role,
      ascii,
    ),
  ];
}

/** Everything that is known about a run's verdict and the decision on it. */
function sayings(run: TrialRun | undefined, left: Left, unit: TemperatureUnit): readonly string[] {
  if (run === undefined) return [];
  const lines = run.result.reasons.map((reason) => runReasonText(reason, { unit }));
  return [
    ...(run.decision.kind === 'automatic' ? [] : [RECORDS_TEXT.because(neutralise(run.decision.reason))]),
    ...(left === null ? [] : [RECORDS_TEXT.leftOut(LEFT_OUT_WHY[left])]),
    ...lines,
    ...run.result.notes.map((note) => RECORDS_TEXT.note(neutralise(note))),
    ...(lines.length === 0 && left === null && run.decision.kind === 'automatic' ? [RECORDS_TEXT.good] : []),
  ];
}
