import type { TrialOutcome } from '../result/trial-outcome.ts';
import type { StoredTrial } from '../store/Store.ts';
import { type ExportField, field } from './ExportField.ts';

export interface TrialRow {
  readonly trial: StoredTrial;
  readonly outcome: TrialOutcome;
}

/** Fields of `export trials`, one row a trial. A dwell counts from press closed, hold included, margin 0. */
export const TRIAL_FIELDS: readonly ExportField<TrialRow>[] = [
  field('trialId', 'trial', ({ trial }) => trial.trialId),
  field('assembly', 'assembly', ({ trial }) => trial.assemblyName),
  field('press', 'press', ({ trial }) => trial.pressName),
  field('startedAt', 'start, date and time', ({ trial }) => trial.startedAt),
  field('closedAt', 'end, date and time; empty while open', ({ trial }) => trial.closedAt),
  field('simulated', 'true for readings of the simulated reader', ({ trial }) => trial.simulated),
  field('recordingIds', 'recordings of the trial', ({ trial }) => trial.recordingIds),
  field('runsMade', 'runs made', ({ outcome }) => outcome.runs.length),
  field('runsCounted', 'runs that enter the mean', ({ outcome }) => outcome.statistics.runs),
  field('targetC', 'bond-line target', ({ outcome }) => outcome.settings.targetC),
  field('holdS', 'hold', ({ outcome }) => outcome.settings.holdS),
  field('meanSoakS', 'mean soak time', ({ outcome }) => outcome.statistics.meanSoakS),
  field('sdSoakS', 'standard deviation of the soak times', ({ outcome }) => outcome.statistics.sdSoakS),
  field('minSoakS', 'shortest soak time', ({ outcome }) => outcome.statistics.minSoakS),
  field('maxSoakS', 'longest soak time', ({ outcome }) => outcome.statistics.maxSoakS),
  field('rangeSoakS', 'range of the soak times', ({ outcome }) => outcome.statistics.rangeSoakS),
  field(
    'meanCi95LowerS',
    'lower end of the 95 % interval of the mean',
    ({ outcome }) => outcome.statistics.meanCi95S?.[0] ?? null,
  ),
  field(
    'meanCi95UpperS',
    'upper end of the 95 % interval of the mean',
    ({ outcome }) => outcome.statistics.meanCi95S?.[1] ?? null,
  ),
  field(
    'nextRunUpper95S',
    'one-sided 95 % upper bound for the next run',
    ({ outcome }) => outcome.statistics.nextRunUpper95S,
  ),
  field('dwellMeanS', 'dwell by the rule mean', ({ outcome }) => outcome.dwells.mean.dwell?.totalS ?? null),
  field(
    'dwellSlowestS',
    'dwell by the rule slowest',
    ({ outcome }) => outcome.dwells.slowest.dwell?.totalS ?? null,
  ),
  field(
    'dwellNextRunS',
    'dwell by the rule next-run',
    ({ outcome }) => outcome.dwells['next-run'].dwell?.totalS ?? null,
  ),
  field(
    'fromOnset',
    'true where press closed is only known from the rise: short, the unsafe side',
    ({ outcome }) => outcome.statistics.fromOnset,
  ),
  field(
    'partSpreadMissing',
    'true where all counting runs share one part and probe position',
    ({ outcome }) => outcome.statistics.partSpreadMissing,
  ),
];
