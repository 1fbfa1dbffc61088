import type { TrialOutcome } from '../result/trial-outcome.ts';
import { oneMoreRun } from '../trial/one-more-run.ts';
import type { Dwell, DwellRule, TrialStatistics } from '../trial/TrialResult.ts';
import { DWELL_RULE_NAME, NO_DWELL, timerSentence } from './dwell-text.ts';
import { numberText, secondsText } from './units-text.ts';

export const RESULT_PAGE = {
  title: 'Suggested dwell',
  none: 'No dwell yet.',
  from: 'from press closed',
  provisional: 'PROVISIONAL: one run only, nothing is known of the spread.',
  others: 'By the other rules:',
  simulated: 'Simulated readings: no dwell for a real press.',
  budgetTitle: 'Where the doubt comes from, largest first',
  overlayTitle: 'Runs from press closed; unusable ones and those set aside are left out',
  noBudget: 'No uncertainty budget yet.',
} as const;

/** The three parts of a dwell and what rounding added: "soak 54.3 s + hold 120 s + margin 0 s = 174.3 s, set 175 s". */
export function dwellParts(result: Dwell): string {
  const sumS = result.soakS + result.holdS + result.marginS;
  const parts = `soak ${secondsText(result.soakS, 1)} + hold ${secondsText(result.holdS, 1)} + margin ${secondsText(result.marginS, 1)}`;
  return `${parts} = ${secondsText(sumS, 1)}, rounded up to ${secondsText(result.totalS, 3)}`;
}

/** One short line for a rule: "174 s  common mean rule". */
export function ruleLine(outcome: TrialOutcome, rule: Exclude<DwellRule, never>): string {
  const one = outcome.dwells[rule];
  const total = one.dwell === null ? NO_DWELL[one.reason] : secondsText(one.dwell.totalS, 3);
  return `${total.padStart(6)}  ${DWELL_RULE_NAME[rule]}`;
}

/** What to set on the press's own timer, where that differs. */
export function timerLine({ settings }: TrialOutcome, result: Dwell): string | null {
  return timerSentence(result, { startsAt: settings.timerStartsAt, offsetS: settings.timerOffsetS });
}

/** Mean and spread in one line: "mean 53.47 s ± 1.01 s (95 %), spread 0.41 s, 3 runs". */
export function figuresLine(statistics: TrialStatistics | null): string | null {
  if (statistics === null || statistics.meanSoakS === null) return null;
  const { runs, meanSoakS, sdSoakS, meanCi95S } = statistics;
  if (runs === 1 || sdSoakS === null || meanCi95S === null)
    return `1 run counts: soak time ${numberText(meanSoakS, 2)} s`;
  const halfS = (meanCi95S[1] - meanCi95S[0]) / 2;
  return `mean ${numberText(meanSoakS, 2)} s ± ${numberText(halfS, 2)} s (95 %), spread ${numberText(sdSoakS, 2)} s, ${runs} runs`;
}

/** Two runs that happen to agree say little of the spread: three at least. Judgement. */
const FEWEST_ENOUGH = 3;

/** What one more run would buy, if the spread stays as it is. */
export function oneMoreLine(statistics: TrialStatistics | null): string | null {
  if (statistics === null || statistics.runs === 0) return null;
  const { moreRunsForWidth, wantedHalfWidthS } = statistics;
  const more = oneMoreRun(statistics);
  if (more === null) return 'one more run: tells the spread for the first time';
  if (moreRunsForWidth === 0 && statistics.runs >= FEWEST_ENOUGH)
    return `enough runs: the mean is known inside ± ${secondsText(wantedHalfWidthS)}`;
  if (moreRunsForWidth === null) return 'more runs would not help: find what varies';
  const buys = `one more run: mean ± ${numberText(more.halfWidthNowS, 1)} s becomes about ± ${numberText(more.halfWidthThenS, 1)} s`;
  return moreRunsForWidth <= 1
    ? buys
    : `${buys}; ${moreRunsForWidth} more for ± ${secondsText(wantedHalfWidthS)}`;
}
