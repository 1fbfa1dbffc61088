import type { RunResult } from '../run/RunResult.ts';

/** A run inside a trial, with the operator's decision on it. */
export interface TrialRun {
  readonly source: string;
  readonly result: RunResult;
  /** 'automatic': good runs count, suspect and unusable ones do not. */
  readonly decision:
    | { readonly kind: 'automatic' }
    | { readonly kind: 'set-aside'; readonly reason: string }
    /** Only a suspect run can be taken in; an unusable one never. */
    | { readonly kind: 'taken-in'; readonly reason: string };
}

export interface TrialStatistics {
  /** Number of runs that count. */
  readonly runs: number;
  readonly meanSoakS: number | null;
  readonly sdSoakS: number | null;
  readonly minSoakS: number | null;
  readonly maxSoakS: number | null;
  readonly rangeSoakS: number | null;
  /** Two-sided 95 % confidence interval of the mean; null under 2 runs. */
  readonly meanCi95S: readonly [number, number] | null;
  /** One-sided 95 % upper prediction bound for the next run; null under 2 runs. */
  readonly nextRunUpper95S: number | null;
  /** About how many more runs bring the half-width of the mean's interval inside `wantedHalfWidthS`; null if unknown. */
  readonly moreRunsForWidth: number | null;
  readonly wantedHalfWidthS: number;
  /** True when all counting runs share one part and one probe position. */
  readonly partSpreadMissing: boolean;
  /** True when every counting run's closing is only known from the onset of the rise: such soak times are short. */
  readonly fromOnset: boolean;
}

/** 'tolerance': a bound for a stated share of all cycles, for recipes meant for many parts. */
export type DwellRule = 'mean' | 'slowest' | 'next-run' | 'tolerance';

export interface Dwell {
  readonly rule: DwellRule;
  /** Soak part by the rule, before rounding. */
  readonly soakS: number;
  readonly holdS: number;
  readonly marginS: number;
  /** From press closed; rounded up to the press timer's step. */
  readonly totalS: number;
  /** What to set on the press's own timer, its offset to press closed included; rounded up to its step. */
  readonly timerSetS: number;
  /** True when it rests on one run: no spread is claimed. */
  readonly provisional: boolean;
}
