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
}

export type DwellRule = 'mean' | 'slowest' | 'next-run';

export interface Dwell {
  readonly rule: DwellRule;
  /** Soak part by the rule, before rounding. */
  readonly soakS: number;
  readonly holdS: number;
  readonly marginS: number;
  /** Rounded up to the press timer's step. */
  readonly totalS: number;
  /** True when it rests on one run: no spread is claimed. */
  readonly provisional: boolean;
}
