/** Set and stored before the data of the second press are shown. */
export interface EquivalencePlan {
  /** The second press may be this much slower, s, above 0. */
  readonly slowerS: number;
  /** And this much faster, s, above 0. */
  readonly fasterS: number;
  /** When the margins were stated, ISO 8601; a label. */
  readonly statedAt: string;
}

/** Fewer runs a side make no claim. */
export const LEAST_RUNS_A_SIDE = 3;

export type Equivalence =
  | { readonly kind: 'too-few-runs'; readonly runsFirst: number; readonly runsSecond: number }
  | (EquivalenceFigures & { readonly kind: 'shown' | 'different' })
  | (EquivalenceFigures & {
      readonly kind: 'not-shown';
      /** About how many more runs on each press might show it, if difference and spread stay; null if none would. */
      readonly moreRunsEach: number | null;
    });

export interface EquivalenceFigures {
  /** Second press less first, s: positive is slower. */
  readonly differenceS: number;
  /** 90 % interval: two one-sided tests at 5 %. The part of two different probes is in it. */
  readonly lowS: number;
  readonly highS: number;
  readonly plan: EquivalencePlan;
  /** What two different probes add to each end, s; 0 where probe and reader are the same. */
  readonly probePartS: number;
  readonly runsFirst: number;
  readonly runsSecond: number;
}
