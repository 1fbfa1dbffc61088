/** One trial of one press and assembly, as the history chart shows it. */
export interface TrialPoint {
  readonly trialId: string;
  /** When it was made, ISO 8601; a label. Points are charted in the order given. */
  readonly madeAt: string;
  readonly meanSoakS: number;
  readonly runs: number;
}

export type ChartSignal =
  /** Outside three sigma. Zone rule 1 of the NIST/SEMATECH e-Handbook, 6.3.2. */
  | 'beyond-limit'
  /** Two of three beyond two sigma on one side. Zone rule 2. */
  | 'two-of-three'
  /** Four of five beyond one sigma on one side. Zone rule 3. */
  | 'four-of-five'
  /** Eight in a row on one side of the centre. Zone rule 4: a shift. */
  | 'shift'
  /** Six in a row rising or falling. Trend rule; NIST/SEMATECH e-Handbook, 6.3.2: a drift. */
  | 'drift'
  /** Moving range above its limit: a jump between two trials. */
  | 'jump';

export interface ChartedPoint extends TrialPoint {
  /** Distance from the point before, s; null for the first. */
  readonly movingRangeS: number | null;
  /** Signals that end at this point. */
  readonly signals: readonly ChartSignal[];
}

export interface IndividualsChart {
  readonly points: readonly ChartedPoint[];
  readonly centreS: number;
  readonly meanMovingRangeS: number;
  readonly sigmaS: number;
  readonly lowerLimitS: number;
  readonly upperLimitS: number;
  readonly movingRangeLimitS: number;
  /** Under 20 points the limits are only a first guess. */
  readonly provisional: boolean;
}
