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
    'dwellToleranceS',
    'dwell by the rule tolerance: 95 % of all cycles with 95 % confidence',
    ({ outcome }) => outcome.dwells.tolerance.dwell?.totalS ?? null,
  ),
  field(
    'expandedUncertaintyS',
    '95 % interval of the mean soak time, half-width, all parts together',
    ({ outcome }) => outcome.budget?.total.expandedUncertaintyS ?? null,
  ),
  field(
    'standardUncertaintyS',
    'its standard uncertainty',
    ({ outcome }) => outcome.budget?.total.standardUncertaintyS ?? null,
  ),
  field(
    'coverageFactor',
    'expanded by standard',
    ({ outcome }) => outcome.budget?.total.coverageFactor ?? null,
  ),
  field(
    'commonExpandedUncertaintyS',
    'parts common to all runs together, half-width; averaging does not help',
    ({ outcome }) => outcome.budget?.common?.expandedUncertaintyS ?? null,
  ),
  field('uncertaintyParts', 'parts of the budget: code, standard uncertainty in s', ({ outcome }) =>
    (outcome.budget?.lines ?? []).map(({ code, standardUncertaintyS }) => `${code} ${standardUncertaintyS}`),
  ),
  field('spreadUnknown', 'true with one run: its spread is in no figure', ({ outcome }) =>
    outcome.budget === null ? null : outcome.budget.spreadUnknown,
  ),
  field(
    'referenceStartC',
    'start that the runs are compared at',
    ({ outcome }) => outcome.reference.reference.startC,
  ),
  field(
    'referencePlatenC',
    'platens that the runs are compared at, mean of both',
    ({ outcome }) => outcome.reference.reference.platenC,
  ),
  field('oddRun', 'run farther out than chance allows, by its number in the trial', ({ outcome }) =>
    outcome.oddRun === null ? null : outcome.runs.indexOf(outcome.oddRun.run) + 1,
  ),
  field(
    'moreRunsForWidth',
    'about how many more runs bring the interval of the mean inside the wanted width',
    ({ outcome }) => outcome.statistics.moreRunsForWidth,
  ),
  field('wantedHalfWidthS', 'that width, half', ({ outcome }) => outcome.statistics.wantedHalfWidthS),
  field(
    'onsetDelayAddedS',
    'delay of the onset, added to soak times known from the onset only',
    ({ outcome }) => outcome.onsetDelayS,
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
