import { sampleMean } from '../statistics/sample-mean.ts';
import { sampleSd } from '../statistics/sample-sd.ts';
import { isFromOnset } from './counting-runs.ts';
import type { TrialRun } from './TrialResult.ts';

export interface OnsetDelay {
  /** Mean of (onset − press closed) over the marked runs, s. */
  readonly delayS: number;
  /** Spread from run to run; null with one marked run. */
  readonly sdS: number | null;
  readonly runs: number;
}

/**
 * The heat's delay through the part, from runs of the same assembly whose press closed was marked and whose
 * onset of the rise was seen as well. It is what a soak time from the onset lacks. Null without such a run.
 */
export function onsetDelay(markedRuns: readonly TrialRun[]): OnsetDelay | null {
  const delaysS = markedRuns.flatMap((run) => {
    const { onset, pressClosed, verdict } = run.result;
    if (onset === null || pressClosed === null || isFromOnset(run) || verdict !== 'good') return [];
    return [onset.timeS - pressClosed.timeS];
  });
  if (delaysS.length === 0) return null;
  return {
    delayS: sampleMean(delaysS),
    sdS: delaysS.length < 2 ? null : sampleSd(delaysS),
    runs: delaysS.length,
  };
}
