import type { Expanded, PartCode, UncertaintyPart } from './UncertaintyPart.ts';

/** A part common to all runs, as stated. In °C it becomes seconds by the slope, or by a sensitivity of its own. */
export interface CommonPart {
  readonly code: PartCode;
  readonly stated:
    | { readonly limitC: number }
    | { readonly standardUncertaintyC: number; readonly degreesOfFreedom?: number }
    | { readonly limitS: number }
    | { readonly standardUncertaintyS: number; readonly degreesOfFreedom?: number };
  /** Seconds of soak time per °C where it is not 1 ÷ slope (platen offset: about −0.5 s/°C). */
  readonly sensitivitySPerC?: number;
  /** Other parts that this one already holds: a probe calibrated with its reader holds the cold junction. */
  readonly includes?: readonly PartCode[];
  /** What would shrink it, and to what. */
  readonly remedy?: { readonly action: RemedyAction; readonly stated: CommonPart['stated'] };
}

export type RemedyAction =
  | 'calibrate-probe'
  | 'calibrate-cold-junction'
  | 'relay-probe'
  | 'measure-platens'
  | 'more-runs';

export interface BudgetLine extends UncertaintyPart {
  /** Interval of this part alone, two-sided, s. */
  readonly expandedS: number;
  /** Share of the combined variance, 0 to 1; null for an "of which" line, which is never added. */
  readonly share: number | null;
  readonly remedy: { readonly action: RemedyAction; readonly expandedThenS: number } | null;
}

export interface SoakTimeBudget {
  readonly meanSoakS: number;
  readonly runs: number;
  /** Lines that are added, largest first. */
  readonly lines: readonly BudgetLine[];
  /** Shown under the run-to-run line, already inside it. */
  readonly ofWhich: readonly BudgetLine[];
  /** Of the mean soak time, all added lines together. */
  readonly total: Expanded;
  /** Parts common to all runs together; null where none is stated. `upperS` is what they may make a dwell short by. */
  readonly common: Expanded | null;
  /** True with one run: its spread is unknown and in no figure here. */
  readonly spreadUnknown: boolean;
}
