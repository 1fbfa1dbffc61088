import type { Verdict } from '../run/RunResult.ts';
import type { TrialRun } from '../trial/TrialResult.ts';

/** What stands against a run when it is held against a recipe. Differences: run less recipe. */
export type RecheckReason =
  | { readonly code: 'soak-above-band' | 'soak-below-band'; readonly soakS: number; readonly limitS: number }
  | { readonly code: 'hold-short'; readonly heldS: number; readonly wantedS: number }
  | { readonly code: 'start-differs'; readonly differenceC: number; readonly limitC: number }
  | {
      readonly code: 'platen-differs';
      readonly which: 'upper' | 'lower';
      readonly differenceC: number;
      readonly limitC: number;
    }
  | { readonly code: 'run-not-usable'; readonly verdict: Verdict }
  | { readonly code: 'from-onset' };

/** One run held against the recipe. */
export interface RunRecheck {
  readonly run: TrialRun;
  /** Null where the recipe has no band (one run) or the run no soak time. */
  readonly insideBand: boolean | null;
  /** Hold that the recipe's dwell leaves this run, s: dwell less soak time. */
  readonly heldAtDwellS: number | null;
  readonly holdMet: boolean | null;
  /** Start and platens as in the recipe's own trial, as far as known. */
  readonly comparable: boolean;
  readonly reasons: readonly RecheckReason[];
  /** Soak time by the rules that were in force when the run was stored; null where nothing was stored. */
  readonly before: {
    readonly soakTimeS: number | null;
    readonly verdict: Verdict;
    readonly ruleVersion: number;
  } | null;
}

export type RecheckVerdict =
  /** Every comparable run is inside the band and holds fully. */
  | 'holds'
  /** Some comparable run falls short or lies outside. */
  | 'does-not-hold'
  /** Too little to say: no comparable usable run. */
  | 'not-shown';

export interface Recheck {
  readonly verdict: RecheckVerdict;
  /** Two-sided 95 % interval for a next run of the recipe's own trial, s; null with one run. */
  readonly bandS: readonly [number, number] | null;
  readonly runs: readonly RunRecheck[];
  readonly counts: {
    readonly usable: number;
    readonly comparable: number;
    readonly insideBand: number;
    readonly holdMet: number;
  };
  /** Share of comparable runs that one would expect outside a 95 % band by chance alone, as a count. */
  readonly expectedOutside: number;
}
