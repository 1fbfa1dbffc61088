import type { LeftOutWhy } from '../trial/counting-runs.ts';
import type { TrialStatistics } from '../trial/TrialResult.ts';
import { numberText, secondsText } from './units-text.ts';

export const LEFT_OUT_WHY: Readonly<Record<LeftOutWhy, string>> = {
  unusable: 'unusable: never enters the mean',
  suspect: 'suspect: stays out until taken in with a reason',
  'set-aside': 'set aside',
  'from-onset': 'timed from the onset of the rise: never averaged with runs timed from a mark',
  'no-soak-time': 'has no soak time',
};

/** The figures of a trial in plain lines, for a result without a screen. */
export function trialLines(statistics: TrialStatistics): readonly string[] {
  const { runs, meanSoakS } = statistics;
  if (meanSoakS === null) return ['No run counts yet: there is no soak time to state.'];
  if (runs === 1) return [`1 run counts: soak time ${fixed(meanSoakS)} s.`, ...trialRemarks(statistics)];
  return [
    `${runs} runs count: mean soak time ${fixed(meanSoakS)} s, standard deviation ${fixed(statistics.sdSoakS)} s, ` +
      `${fixed(statistics.minSoakS)} to ${fixed(statistics.maxSoakS)} s (range ${fixed(statistics.rangeSoakS)} s).`,
    `Mean lies within ${fixed(statistics.meanCi95S?.[0] ?? null)} to ${fixed(statistics.meanCi95S?.[1] ?? null)} s (95 %); ` +
      `the next run stays below ${fixed(statistics.nextRunUpper95S)} s (95 %, one-sided).`,
    ...trialRemarks(statistics),
  ];
}

/** What a reader must know beside the figures: how little few runs say, what spread is missing, what is short. */
export function trialRemarks(statistics: TrialStatistics): readonly string[] {
  const remarks: string[] = [];
  if (statistics.fromOnset) {
    remarks.push(
      'All soak times are from the onset of the rise: they lack the delay through the part and are short, the unsafe side.',
    );
  }
  if (statistics.runs === 1) {
    remarks.push('One run says nothing about the spread: the recipe can only be provisional.');
  }
  if (statistics.partSpreadMissing && statistics.runs > 1) {
    remarks.push(
      'As far as stated, all runs share one part and one probe position: the spread from part to part is in none of these bounds.',
    );
  }
  remarks.push(...moreRunsRemark(statistics));
  return remarks;
}

function moreRunsRemark({ runs, moreRunsForWidth, wantedHalfWidthS }: TrialStatistics): readonly string[] {
  if (runs < 2) return [];
  const wish = `bring the mean inside ±${secondsText(wantedHalfWidthS, 2)} (95 %)`;
  if (moreRunsForWidth === null)
    return [`More runs than anyone would make would be needed to ${wish}: find what varies.`];
  if (moreRunsForWidth === 0) return [];
  return [
    `About ${moreRunsForWidth} more ${moreRunsForWidth === 1 ? 'run' : 'runs'} would ${wish}, if the spread stays as it is.`,
  ];
}

function fixed(seconds: number | null): string {
  return numberText(seconds, 2);
}
