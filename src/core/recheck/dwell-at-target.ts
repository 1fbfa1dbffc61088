import { type OutcomeSettings, trialOutcome } from '../result/trial-outcome.ts';
import type { TrialRun } from '../trial/TrialResult.ts';

/** What all the runs would give with another target. */
export interface DwellAtTarget {
  readonly targetC: number;
  readonly runs: number;
  readonly meanSoakS: number | null;
  /** Dwell by each rule, hold and margin included, s. */
  readonly meanDwellS: number | null;
  readonly nextRunDwellS: number | null;
  readonly toleranceDwellS: number | null;
  readonly chosenDwellS: number | null;
}

/** One row of the what-if table: runs analysed at this target, put through every dwell rule. */
export function dwellAtTarget(runs: readonly TrialRun[], settings: OutcomeSettings): DwellAtTarget {
  const { statistics, dwells, chosen } = trialOutcome(runs, settings);
  return {
    targetC: settings.targetC,
    runs: statistics.runs,
    meanSoakS: statistics.meanSoakS,
    meanDwellS: dwells.mean.dwell?.totalS ?? null,
    nextRunDwellS: dwells['next-run'].dwell?.totalS ?? null,
    toleranceDwellS: dwells.tolerance.dwell?.totalS ?? null,
    chosenDwellS: chosen.dwell?.totalS ?? null,
  };
}
