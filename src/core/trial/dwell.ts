import { StatisticsError } from '../statistics/StatisticsError.ts';
import { roundUpToStep } from './round-up-to-step.ts';
import { soakByRule } from './soak-by-rule.ts';
import type { Dwell, DwellRule, TrialStatistics } from './TrialResult.ts';
import type { ToleranceWish } from './tolerance-upper.ts';

export interface DwellInput {
  readonly statistics: TrialStatistics;
  readonly rule: DwellRule;
  readonly holdS: number;
  readonly marginS?: number;
  /** Step of the press's own timer, s. */
  readonly timerStepS?: number;
  /** Seconds from the timer's start to press closed; negative when the timer starts later. */
  readonly timerOffsetS?: number;
  /** For the tolerance rule. */
  readonly tolerance?: ToleranceWish;
}

/** Why a rule gives no dwell. */
export type NoDwellReason = 'no-counting-run' | 'two-runs-needed';

export type DwellOutcome =
  | { readonly dwell: Dwell; readonly reason: null }
  | { readonly dwell: null; readonly reason: NoDwellReason };

/**
 * Dwell = soak by the rule + hold + margin, rounded up to the press timer's step, all in s.
 * Rules: mean; slowest run; next-run (one-sided 95 % prediction bound); tolerance (bound for a share of all
 * cycles). The bounds need two runs; a dwell on one run is provisional. `totalS` counts from press closed,
 * `timerSetS` from whatever starts the press's timer. The hold is never shortened by rounding.
 */
export function dwell(input: DwellInput): DwellOutcome {
  const { statistics, rule, holdS, marginS = 0, timerStepS = 1, timerOffsetS = 0, tolerance } = input;
  requireTimes({ holdS, marginS, timerStepS, timerOffsetS });
  if (statistics.meanSoakS === null) return { dwell: null, reason: 'no-counting-run' };
  const soakS = soakByRule(statistics, rule, tolerance);
  if (soakS === null) return { dwell: null, reason: 'two-runs-needed' };
  const neededS = soakS + holdS + marginS;
  return {
    dwell: Object.freeze({
      rule,
      soakS,
      holdS,
      marginS,
      totalS: roundUpToStep(neededS, timerStepS),
      timerSetS: roundUpToStep(neededS + timerOffsetS, timerStepS),
      provisional: statistics.runs < 2,
    }),
    reason: null,
  };
}

function requireTimes(times: {
  readonly holdS: number;
  readonly marginS: number;
  readonly timerStepS: number;
  readonly timerOffsetS: number;
}): void {
  const { holdS, marginS, timerStepS, timerOffsetS } = times;
  if (
    holdS >= 0 &&
    marginS >= 0 &&
    timerStepS >= 0.001 &&
    Number.isFinite(holdS + marginS + timerStepS + timerOffsetS)
  ) {
    return;
  }
  throw new StatisticsError(
    'option-out-of-range',
    `dwell requires hold and margin of 0 s or more and a timer step of 0.001 s or more, came hold ${holdS}, margin ${marginS}, step ${timerStepS}, offset ${timerOffsetS}`,
    'Give hold, margin and timer step as durations, for example 120s, 0s and 1s',
  );
}
