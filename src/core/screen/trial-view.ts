import type { SegmentRole } from '../chart/StyledRow.ts';
import { dwellSentences } from '../text/dwell-text.ts';
import { REPLAY_TEXT } from '../text/replay-text.ts';
import { onPress, RUN_FACTS } from '../text/run-facts-text.ts';
import { CHANNEL_NAME, FAULT_TEXT, SCREEN_TEXT, STATE_WORD, type StateName } from '../text/screen-text.ts';
import { secondsText, temperatureField, temperatureText } from '../text/units-text.ts';
import { betweenRows } from './between-rows.ts';
import { bondLineTrouble } from './bond-line-trouble.ts';
import { channelStyle } from './channel-style.ts';
import { chartOf } from './chart-of.ts';
import { dialogView } from './dialog-view.ts';
import { factLines } from './fact-lines.ts';
import { keysNow } from './keys-now.ts';
import { mainFigure } from './main-figure.ts';
import { nextAction } from './next-action.ts';
import { speedOf } from './pace.ts';
import { isRunOpen } from './reduce-reading.ts';
import { RUN_HEADINGS, runRows } from './run-rows.ts';
import { stateName } from './state-name.ts';
import { statusLines } from './status-lines.ts';
import type { TrialScreenState } from './TrialScreenState.ts';
import type { TrialView, ViewOptions } from './TrialView.ts';

const STATE_ROLE: Readonly<Record<StateName, SegmentRole>> = {
  'no-reader': 'fault',
  refused: 'fault',
  stale: 'caution',
  fault: 'fault',
  open: 'fault',
  waiting: 'plain',
  heating: 'strong',
  hold: 'good',
  dipped: 'caution',
  'hold-done': 'good',
  'hold-done-after-dip': 'caution',
  'hold-not-verified': 'caution',
  opened: 'plain',
  good: 'good',
  suspect: 'caution',
  unusable: 'fault',
  spoilt: 'fault',
};

const FLASH_HALF_US = 500_000;
const FEWEST_COLUMNS = 80;
const FEWEST_ROWS = 24;

/** State of the trial screen as words and figures, for a window of a given size. Pure: same state, same view. */
export function trialView(state: TrialScreenState, options: ViewOptions): TrialView {
  const { columns, rows, ascii } = options;
  const name = stateName(state);
  const { setup } = state;
  // On the person's clock, also where the press's runs faster.
  const halfUs = FLASH_HALF_US * speedOf(state);
  const flashing = state.nowUs < state.flashUntilUs && Math.floor(state.nowUs / halfUs) % 2 === 0;
  const chart = chartOf(state);
  const notice = state.notice !== null && state.nowUs < state.notice.untilUs ? state.notice : null;
  return {
    columns,
    rows: Math.max(1, rows - 1),
    ascii,
    tooSmall: columns < FEWEST_COLUMNS || rows < FEWEST_ROWS ? SCREEN_TEXT.tooSmall(columns, rows) : null,
    title: onPress(setup.assemblyName, setup.pressName),
    simulated: setup.simulated,
    badge: [
      state.pace === null ? '' : REPLAY_TEXT.badge(state.pace),
      setup.simulated ? SCREEN_TEXT.simulated : '',
    ]
      .filter(Boolean)
      .join(' '),
    figure: mainFigure(state, name),
    state: { name, words: STATE_WORD[name], role: STATE_ROLE[name], flash: flashing },
    next: notice?.large ?? nextAction(state, name),
    facts: factLines(state, name),
    channels: channelLines(state),
    conditions: `target ${temperatureText(setup.rules.targetC, state.unit)}  hold ${secondsText(setup.rules.holdS)}`,
    chart: chart === null ? null : { ...chart, ascii },
    between: !isRunOpen(state) && state.standing.runs.length > 0,
    drawRuns: ({ columns: wide, rows: room }) => betweenRows(state, wide, room),
    runHeadings: RUN_HEADINGS,
    runs: runRows(state),
    summary: summaryLines(state),
    dwell: isRunOpen(state) ? [] : dwellLines(state),
    notice: notice === null ? null : { text: notice.text, role: notice.tone },
    dialog: dialogView(state),
    keys: keysNow(state),
    status: statusLines(state),
  };
}

function channelLines(state: TrialScreenState): TrialView['channels'] {
  const trouble = bondLineTrouble(state);
  const old = trouble !== null && trouble.kind !== 'fault';
  return state.setup.roles.flatMap((role, channel) => {
    if (role === 'unused') return [];
    const style = channelStyle(role);
    const value = state.shown?.values[channel];
    const shown =
      value?.kind === 'temperature'
        ? temperatureField(value.temperatureC, state.unit).trim()
        : value?.kind === 'fault'
          ? FAULT_TEXT[value.fault].split(':')[0]
          : RUN_FACTS.noValue;
    const [long, brief] = CHANNEL_NAME[role];
    return [
      {
        text: `${style.letter} ${long} ${shown}`,
        brief: `${style.letter} ${brief} ${shown}`,
        least: `${style.letter} ${shown}`,
        role: value?.kind === 'fault' ? 'fault' : old ? 'quiet' : style.role,
      },
    ];
  });
}

function summaryLines({ standing: { statistics } }: TrialScreenState): readonly string[] {
  if (statistics === null || statistics.meanSoakS === null) return [];
  const { runs, meanSoakS, sdSoakS, meanCi95S } = statistics;
  if (runs === 1 || sdSoakS === null || meanCi95S === null) return [RUN_FACTS.oneRun(meanSoakS)];
  const halfS = (meanCi95S[1] - meanCi95S[0]) / 2;
  return [RUN_FACTS.mean(meanSoakS, halfS), RUN_FACTS.spread(sdSoakS, runs)];
}

function dwellLines(state: TrialScreenState): readonly string[] {
  const { statistics } = state.standing;
  if (statistics === null || statistics.runs === 0) return [];
  const { marginS, timerStepS, timerOffsetS, rules } = state.setup;
  return dwellSentences({ statistics, holdS: rules.holdS, marginS, timerStepS, timerOffsetS });
}
