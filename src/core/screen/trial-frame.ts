import { drawChart } from '../chart/draw-chart.ts';
import { fitRow } from '../chart/fit-row.ts';
import type { Segment, SegmentRole, StyledRow } from '../chart/StyledRow.ts';
import { asciiText } from './ascii-text.ts';
import { asciiView } from './ascii-view.ts';
import { cutAtWord } from './cut-at-word.ts';
import { headRows } from './head-rows.ts';
import { runsPanel } from './runs-panel.ts';
import type { TrialView, ViewLine } from './TrialView.ts';
import { wrapWords } from './wrap-words.ts';

/** Lowest chart that is drawn, rows. */
const LOWEST_CHART = 6;

/** Lays a view out into exactly `rows` rows of `columns` characters. */
export function trialFrame(wanted: TrialView): readonly StyledRow[] {
  const view = wanted.ascii ? asciiView(wanted) : wanted;
  const { columns, rows } = view;
  const fill = (all: readonly StyledRow[]) => padded(all, rows).map((row) => fitRow(row, columns));
  if (view.tooSmall !== null)
    return fill(wrapWords(view.tooSmall, columns).map((text) => line(text, 'strong')));

  if (view.dialog?.place === 'cover') {
    const foot = [...keyRows(view), statusRow(view)];
    const { draw } = view.dialog;
    if (draw !== undefined) {
      const room = rows - 3 - foot.length;
      const page = draw({ columns, rows: room, ascii: view.ascii }).map((row) => plainRow(row, view.ascii));
      return fill([titleRow(view), ...questionRow(view), ...padded(page, room), ...answerRow(view), ...foot]);
    }
    const room = rows - 2 - foot.length;
    return fill([titleRow(view), [], ...padded(pageRows(view, room), room), ...foot]);
  }
  const { head, overflow } = headRows(view);
  const top = [titleRow(view), ...head, channelRow(view)];
  const bottom = [...messageRows(view, overflow), ...dwellRows(view), ...keyRows(view), statusRow(view)];
  const room = rows - top.length - bottom.length;
  return fill([...top, ...padded(middleRows(view, room), room), ...bottom]);
}

function line(text: string, role: SegmentRole = 'plain'): StyledRow {
  return [{ text, role }];
}

function padded(rows: readonly StyledRow[], count: number): readonly StyledRow[] {
  return Array.from({ length: Math.max(0, count) }, (_, i) => rows[i] ?? []);
}

function titleRow(view: TrialView): StyledRow {
  const badge = view.badge === '' ? '' : ` ${view.badge} `;
  const room = view.columns - badge.length - 4;
  // Where the title would be cut, the other unit of the target goes first.
  const fits = view.title.length + 1 + view.conditions.length <= room;
  const conditions = fits ? view.conditions : view.conditions.replace(/ \([^)]*\)/u, '');
  const left = ` ${view.title}`.slice(0, room - conditions.length);
  const middle = `   ${conditions}`;
  const gap = Math.max(1, view.columns - left.length - middle.length - badge.length - 1);
  return [
    { text: left, role: 'strong' },
    { text: middle, role: 'plain' },
    { text: ' '.repeat(gap), role: 'plain' },
    { text: badge, role: 'flash' },
  ];
}

/** Names in full where they fit, else short, else the letter alone: a value is never cut from its unit. */
function channelRow(view: TrialView): StyledRow {
  const forms = [
    view.channels.map(({ text }) => text),
    view.channels.map(({ brief }) => brief),
    view.channels.map(({ least }) => least),
  ];
  const fits = (texts: readonly string[]) =>
    texts.reduce((sum, text) => sum + text.length + 2, -1) <= view.columns;
  const texts = forms.find(fits) ?? forms[2] ?? [];
  const gap = { text: '  ', role: 'plain' as const };
  return view.channels.flatMap(({ role }, i) => [
    i === 0 ? { text: ' ', role: 'plain' as const } : gap,
    { text: texts[i] ?? '', role },
  ]);
}

function middleRows(view: TrialView, room: number): readonly StyledRow[] {
  if (view.dialog?.place === 'page') {
    const { draw } = view.dialog;
    if (draw === undefined) return pageRows(view, room);
    const rows = draw({ columns: view.columns, rows: room - 1, ascii: view.ascii });
    return [...questionRow(view), ...rows.map((row) => plainRow(row, view.ascii))];
  }
  if (view.between) return betweenRuns(view, room);
  const panelColumns = view.columns >= 110 ? 46 : 28;
  const chartColumns = view.columns - panelColumns - 1;
  const chart = view.chart === null ? [] : drawChart({ ...view.chart, columns: chartColumns, rows: room });
  const panel = runsPanel(view, panelColumns, room);
  return padded(chart, room).map((row, i) => [
    ...fitRow(row, chartColumns),
    { text: view.ascii ? '|' : '│', role: 'axis' as const },
    ...(panel[i] ?? []),
  ]);
}

/** Between two runs the runs take the width; what room is left below shows the latest two minutes. */
function betweenRuns(view: TrialView, room: number): readonly StyledRow[] {
  const { columns, ascii, chart } = view;
  const wanted = view.runs.length + 3;
  const forTable = room - wanted >= LOWEST_CHART ? wanted : room;
  const table = view.drawRuns({ columns, rows: forTable, ascii }).map((row) => plainRow(row, ascii));
  const left = room - table.length;
  if (chart === null || left < LOWEST_CHART) return padded(table, room);
  return [...table, ...drawChart({ ...chart, columns, rows: left })];
}

function plainRow(row: StyledRow, ascii: boolean): StyledRow {
  return ascii ? row.map(({ text, role }) => ({ text: asciiText(text), role })) : row;
}

function questionRow(view: TrialView): readonly StyledRow[] {
  return [line(` ${view.dialog?.question ?? ''}`, 'strong')];
}

/** What is typed into a page's question, or a notice. */
function answerRow({ dialog, notice }: TrialView): readonly StyledRow[] {
  if (dialog !== null && dialog.entry !== null)
    return [
      [
        { text: ' ', role: 'plain' },
        { text: ` ${dialog.entry.slice(-60)}_ `, role: 'key' },
      ],
    ];
  return [notice === null ? [] : line(` ${notice.text}`, notice.role)];
}

function pageRows(view: TrialView, room: number): readonly StyledRow[] {
  const bullets = view.dialog?.place === 'cover' ? ['- ', '  '] : ['', '    '];
  const rows: StyledRow[] = [line(` ${view.dialog?.question ?? ''}`, 'strong')];
  for (const { text, role } of view.dialog?.lines ?? []) {
    wrapWords(text, view.columns - 6).forEach((words, i) => {
      rows.push(line(` ${bullets[i === 0 ? 0 : 1]}${words}`, role));
    });
  }
  return rows.slice(0, room);
}

/** One row: the open question with what was typed, a notice, or a fact that found no room above. */
function messageRows(view: TrialView, overflow: ViewLine | null): readonly StyledRow[] {
  const { dialog, notice } = view;
  if (dialog?.place === 'line') {
    const entry =
      dialog.entry === null ? [] : [{ text: ` ${dialog.entry.slice(-40)}_ `, role: 'key' as const }];
    return [[{ text: ` ${dialog.question} `, role: 'strong' }, ...entry]];
  }
  const said = notice ?? overflow;
  return [said === null ? [] : line(` ${cutAtWord(said.text, view.columns - 2)}`, said.role)];
}

/** Both rules with the same weight. */
function dwellRows(view: TrialView): readonly StyledRow[] {
  return view.dwell.flatMap((text) =>
    wrapWords(text, view.columns - 4).map((words, i) => line(` ${i === 0 ? '' : '  '}${words}`, 'strong')),
  );
}

/** The keys that matter now, in one row or two. */
function keyRows(view: TrialView): readonly StyledRow[] {
  const rows: Segment[][] = [[]];
  let used = 0;
  for (const { key, does } of view.keys) {
    const width = key.length + does.length + 5;
    if (used + width > view.columns) {
      rows.push([]);
      used = 0;
    }
    rows
      .at(-1)
      ?.push(
        { text: ' ', role: 'plain' },
        { text: ` ${key} `, role: 'key' },
        { text: ` ${does}`, role: 'plain' },
      );
    used += width;
  }
  return rows;
}

/** Whole parts only, in short words where the row is too narrow: half a path or figure would mislead. */
function statusRow({ status, columns }: TrialView): StyledRow {
  const whole = status.reduce((sum, { text }) => sum + text.length + 2, -1) <= columns;
  let used = 0;
  return status.flatMap(({ text, brief, role }, i) => {
    const before = i === 0 ? ' ' : '  ';
    const said = whole ? text : (brief ?? text);
    if (used + before.length + said.length > columns) return [];
    used += before.length + said.length;
    return [
      { text: before, role: 'plain' as const },
      { text: said, role },
    ];
  });
}
