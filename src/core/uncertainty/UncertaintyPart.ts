/** How the values of a part are spread. 'student' needs degrees of freedom; the others may have infinitely many. */
export type PartShape = 'normal' | 'student' | 'rectangular' | 'triangular';

/** One source of doubt, already in the unit of the result (here seconds of soak time). */
export interface UncertaintyPart {
  readonly code: PartCode;
  readonly shape: PartShape;
  readonly standardUncertaintyS: number;
  /** Infinity where the part is a limit or taken as known. */
  readonly degreesOfFreedom: number;
}

export type PartCode =
  /** From run to run: spread of the runs over √n. */
  | 'run-to-run'
  /** With one run: only what that run's own crossing and closing leave open. */
  | 'single-run'
  // of which (never added again)
  | 'crossing-and-mark'
  // common to all runs: averaging does not help
  | 'thermocouple-tolerance'
  | 'calibration'
  | 'cold-junction'
  | 'inhomogeneity'
  | 'tip-placement'
  | 'probe-lag'
  | 'platen-offset'
  | 'clock'
  /** Any other, for worked examples and for a user's own. */
  | 'other';

export interface Expanded {
  /** Half-width of the two-sided interval, s. */
  readonly expandedUncertaintyS: number;
  /** What the result stays below with the stated probability, one-sided, above the estimate, s. */
  readonly upperS: number;
  readonly probability: number;
  readonly standardUncertaintyS: number;
  readonly effectiveDegreesOfFreedom: number;
  /** expanded ÷ standard uncertainty. */
  readonly coverageFactor: number;
  readonly method: 'student' | 'monte-carlo';
}
