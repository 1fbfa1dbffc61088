import type { RunReason, Verdict } from '../run/RunResult.ts';
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
  | { readonly code: 'other-assembly' | 'other-press'; readonly name: string }
  /** With what the run's own analysis says against it. */
  | { readonly code: 'run-not-usable'; readonly verdict: Verdict; readonly because: readonly RunReason[] }
  | { readonly code: 'set-aside'; readonly reason: string }
  | { readonly code: 'from-onset' };

/** One run held against the recipe. */
export interface RunRecheck {
  readonly run: TrialRun;
  /** The recipe rests on this run: that it lies inside the recipe's band proves nothing. */
  readonly own: boolean;
  /** Null where the recipe has no band (one run, or another target is asked for) or the run no soak time. */
  readonly insideBand: boolean | null;
  /** Hold that the recipe's dwell leaves this run, s: dwell less soak time. */
  readonly heldAtDwellS: number | null;
  readonly holdMet: boolean | null;
  /** Same assembly, start and platens as in the recipe's own trial, as far as known. */
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
  /** Every comparable run holds fully, and no more lie outside the band than chance explains. */
  | 'holds'
  /** Some comparable run falls short or too many lie outside. */
  | 'does-not-hold'
  /** Too little to say: no comparable usable run. */
  | 'not-shown';

export interface Recheck {
  readonly verdict: RecheckVerdict;
  /** What was asked of the runs; the recipe's own unless stated otherwise. */
  readonly targetC: number;
  readonly holdS: number;
  /** Two-sided 95 % interval for a next run of the recipe's own trial, s; null with one run or for another target. */
  readonly bandS: readonly [number, number] | null;
  readonly runs: readonly RunRecheck[];
  readonly counts: {
    readonly usable: number;
    readonly comparable: number;
    readonly insideBand: number;
    readonly holdMet: number;
    /** Comparable runs that the recipe rests on: not counted for or against its band. */
    readonly own: number;
    /** Comparable runs made on another press than the recipe's. */
    readonly otherPress: number;
    /** Runs that are not compared, and how many of them the recipe's dwell would leave short of the hold. */
    readonly notCompared: number;
    readonly notComparedShort: number;
  };
  /** How many comparable runs of the recipe's later ones one would expect outside a 95 % band by chance alone. */
  readonly expectedOutside: number;
}
