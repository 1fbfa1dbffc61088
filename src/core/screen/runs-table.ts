import type { SegmentRole, StyledRow } from '../chart/StyledRow.ts';
import { RUN_FACTS } from '../text/run-facts-text.ts';
import { runReasonText } from '../text/run-reasons.ts';
import { RUN_REASON_SHORT } from '../text/run-reasons-short.ts';
import { LEFT_OUT_WHY } from '../text/trial-text.ts';
import type { TrialRun } from '../trial/TrialResult.ts';
import { cutAtWord } from './cut-at-word.ts';
import { rowRole, runCells } from './run-rows.ts';
import type { TrialScreenState } from './TrialScreenState.ts';
import { wrapWords } from './wrap-words.ts';

const HEADINGS = ['run', 'soak', 'start', 'slope', 'verdict', 'why'] as const;
const WIDTHS = [4, 9, 8, 12, 10] as const;
const BEFORE_WHY = 1 + WIDTHS.reduce((sum, width) => sum + width, 0) + 1;

/** More runs than the table between two runs surely has in sight. */
const SURELY_SHOWN = 3;

/** Whether the table between two runs is moved by the arrow keys. */
export function scrollsRuns({ standing, setup }: TrialScreenState): boolean {
  return setup.replay !== true && standing.runs.length > SURELY_SHOWN;
}

export interface RunsTableOptions {
  readonly columns: number;
  readonly rows: number;
  /** Place of the chosen run, −1 for none. */
  readonly selected: number;
  /** Scrolled back from the latest by so many runs. @default 0 */
  readonly back?: number;
}

/** The trial's runs over the whole width, the latest (or the chosen one) in sight; where not all are, it says which. */
export function runsTable(
  state: TrialScreenState,
  { columns, rows, selected, back = 0 }: RunsTableOptions,
): readonly StyledRow[] {
  const { runs } = state.standing;
  const most = Math.max(1, rows - 1);
  const atLeast = Math.min(runs.length, most);
  const last = selected >= 0 ? Math.max(atLeast, selected + 1) : Math.max(atLeast, runs.length - back);
  const first = Math.max(0, last - most);
  const heading = HEADINGS.map((word, i) => field(word, i)).join('');
  const others = last - first < runs.length ? RUN_FACTS.someRuns(first + 1, last, runs.length) : '';
  const whyColumns = Math.max(0, columns - BEFORE_WHY);
  return [
    [
      { text: ` ${heading}`, role: 'quiet' },
      ...(others === '' ? [] : [{ text: `   ${others}`, role: 'strong' as const }]),
    ],
    ...(runs.length === 0 ? [[{ text: ` ${RUN_FACTS.noRun}`, role: 'quiet' as const }]] : []),
    ...runs.slice(first, last).map((run, i): StyledRow => {
      const chosen = first + i === selected;
      const [number, soak, start, verdict, slope] = runCells(run, first + i, state.unit);
      const cells = [number, soak, start, slope, verdict].map((cell, at) => field(cell ?? '', at)).join('');
      const why = whyInOneRow(run, state, whyColumns);
      const role: SegmentRole = chosen ? 'key' : rowRole(run);
      return [{ text: `${chosen ? '>' : ' '}${cells} ${why}`, role }];
    }),
  ];
}

/** The sentence where the row holds it, else each reason in a few words: a warning is never cut. */
function whyInOneRow(run: TrialRun, state: TrialScreenState, columns: number): string {
  const { result, decision } = run;
  const sentence = whyLines({ ...run, result: { ...result, notes: [] } }, state)[0] ?? '';
  if (sentence.length <= columns) return sentence;
  if (decision.kind !== 'automatic') return cutAtWord(decision.reason, columns);
  const words = result.reasons.map(({ code }) => RUN_REASON_SHORT[code]);
  for (let shown = words.length; shown > 1; shown--) {
    const rest = words.length - shown;
    const text = `${words.slice(0, shown).join(', ')}${rest > 0 ? ` +${rest}` : ''}`;
    if (text.length <= columns) return text;
  }
  return `${words[0] ?? ''}${words.length > 1 ? ` +${words.length - 1}` : ''}`;
}

/** Everything said of one run: its decision, its reasons, its notes. */
export function runDetails(run: TrialRun, state: TrialScreenState, columns: number): readonly StyledRow[] {
  return whyLines(run, state).flatMap((line) =>
    wrapWords(line, columns - 4).map((words, i) => [
      { text: ` ${i === 0 ? '' : '  '}${words}`, role: 'plain' as const },
    ]),
  );
}

function whyLines({ result, decision }: TrialRun, { unit }: TrialScreenState): readonly string[] {
  const decided =
    decision.kind === 'automatic'
      ? []
      : [`${decision.kind === 'set-aside' ? RUN_FACTS.setAside : RUN_FACTS.takenIn}: ${decision.reason}`];
  const left = decision.kind === 'automatic' && result.verdict === 'suspect' ? [LEFT_OUT_WHY.suspect] : [];
  return [
    ...decided,
    ...result.reasons.map((reason) => runReasonText(reason, { unit })),
    ...left,
    ...result.notes.map((note) => `note: ${note}`),
  ];
}

function field(text: string, at: number): string {
  const width = WIDTHS[at];
  if (width === undefined) return ` ${text}`;
  return at === 4 ? `  ${text.padEnd(width - 2)}` : text.padStart(width);
}
