import { meanInterval } from '../statistics/mean-interval.ts';
import { moreValuesForWidth } from '../statistics/more-values-for-width.ts';
import { nextValueUpper } from '../statistics/next-value-upper.ts';
import { sampleMean } from '../statistics/sample-mean.ts';
import { sampleSd } from '../statistics/sample-sd.ts';
import { countingRuns, isFromOnset } from './counting-runs.ts';
import { partSpreadMissing } from './part-spread-missing.ts';
import type { TrialRun, TrialStatistics } from './TrialResult.ts';

/** Half-width of the mean's interval to aim at, s. Common practice, no source; the user may change it. */
export const WANTED_HALF_WIDTH_S = 2;

/**
 * Count, mean, spread and bounds of a trial's soak times, all in s, over the runs that count
 * (see `countingRuns`). `onsetDelayS`, where known from marked runs of the same assembly, is added to soak times
 * from the onset, which may then count beside marked ones. One run claims no spread: everything that needs two runs is null.
 */
export function trialStatistics(
  runs: readonly TrialRun[],
  {
    wantedHalfWidthS = WANTED_HALF_WIDTH_S,
    onsetDelayS = null,
  }: { readonly wantedHalfWidthS?: number; readonly onsetDelayS?: number | null } = {},
): TrialStatistics {
  const { counting, fromOnset } = countingRuns(runs, { onsetDelayKnown: onsetDelayS !== null });
  const soakTimesS = counting.flatMap((run) => {
    const { soakTimeS } = run.result;
    return soakTimeS === null ? [] : soakTimeS + (isFromOnset(run) ? (onsetDelayS ?? 0) : 0);
  });
  return Object.freeze({
    runs: soakTimesS.length,
    ...ofOneOrMore(soakTimesS),
    ...ofTwoOrMore(soakTimesS, wantedHalfWidthS),
    wantedHalfWidthS,
    partSpreadMissing: partSpreadMissing(counting),
    fromOnset,
  });
}

function ofOneOrMore(soakTimesS: readonly number[]) {
  if (soakTimesS.length === 0) return { meanSoakS: null, minSoakS: null, maxSoakS: null };
  return {
    meanSoakS: sampleMean(soakTimesS),
    minSoakS: Math.min(...soakTimesS),
    maxSoakS: Math.max(...soakTimesS),
  };
}

function ofTwoOrMore(soakTimesS: readonly number[], wantedHalfWidthS: number) {
  if (soakTimesS.length < 2) {
    return {
      sdSoakS: null,
      rangeSoakS: null,
      meanCi95S: null,
      nextRunUpper95S: null,
      moreRunsForWidth: null,
    };
  }
  const sdSoakS = sampleSd(soakTimesS);
  return {
    sdSoakS,
    rangeSoakS: Math.max(...soakTimesS) - Math.min(...soakTimesS),
    meanCi95S: meanInterval(soakTimesS),
    nextRunUpper95S: nextValueUpper(soakTimesS),
    moreRunsForWidth: moreValuesForWidth({
      values: soakTimesS.length,
      sd: sdSoakS,
      wantedHalfWidth: wantedHalfWidthS,
    }),
  };
}
