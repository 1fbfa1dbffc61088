import { countingRuns, isFromOnset, type LeftOutWhy } from '../trial/counting-runs.ts';
import { type DwellInput, type DwellOutcome, dwell } from '../trial/dwell.ts';
import { onsetDelay } from '../trial/onset-delay.ts';
import type { DwellRule, TrialRun, TrialStatistics } from '../trial/TrialResult.ts';
import { trialStatistics } from '../trial/trial-statistics.ts';

/** Rules that every result lists, the common one first. */
export const LISTED_RULES = ['mean', 'slowest', 'next-run'] as const satisfies readonly DwellRule[];

export interface OutcomeSettings {
  readonly rule: DwellRule;
  readonly targetC: number;
  readonly holdS: number;
  readonly marginS: number;
  readonly timerStepS: number;
  readonly timerOffsetS: number;
  readonly timerStartsAt: 'button' | 'closing';
}

/** Everything a result states about a trial: its runs, which of them count, the figures and every rule's dwell. */
export interface TrialOutcome {
  readonly runs: readonly TrialRun[];
  /** Why a run is left out, by position; null where it counts. */
  readonly leftOut: readonly (LeftOutWhy | null)[];
  readonly statistics: TrialStatistics;
  /** Delay of the onset after press closed, known from marked runs and added to soak times from the onset; else null. */
  readonly onsetDelayS: number | null;
  readonly settings: OutcomeSettings;
  readonly dwells: Readonly<Record<(typeof LISTED_RULES)[number], DwellOutcome>>;
  readonly chosen: DwellOutcome;
}

/** Works a trial's outcome out from its runs; the same for a live trial, a replay and the store. */
export function trialOutcome(runs: readonly TrialRun[], settings: OutcomeSettings): TrialOutcome {
  const onsetDelayS = runs.some(isFromOnset) ? (onsetDelay(runs)?.delayS ?? null) : null;
  const { leftOut } = countingRuns(runs, { onsetDelayKnown: onsetDelayS !== null });
  const statistics = trialStatistics(runs, { onsetDelayS });
  const why = new Map(leftOut.map((one) => [one.run, one.why]));
  const input: Omit<DwellInput, 'rule'> = { statistics, ...settings };
  return {
    runs,
    leftOut: runs.map((run) => why.get(run) ?? null),
    statistics,
    onsetDelayS,
    settings,
    dwells: {
      mean: dwell({ ...input, rule: 'mean' }),
      slowest: dwell({ ...input, rule: 'slowest' }),
      'next-run': dwell({ ...input, rule: 'next-run' }),
    },
    chosen: dwell({ ...input, rule: settings.rule }),
  };
}
