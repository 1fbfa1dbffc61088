import type { TemperatureUnit } from '../text/units-text.ts';
import type { TracePoint } from './RunTrace.ts';

/** A run as the overlay draws it: the channel it is timed by, times from press closed. */
export interface OverlayRun {
  /** Number of the run in its trial, or another short name. */
  readonly label: string;
  /** False: drawn grey and dotted, and said to be left out. */
  readonly counts: boolean;
  readonly soakTimeS: number | null;
  readonly slopeCPerS: number | null;
  readonly points: readonly TracePoint[];
}

export interface OverlayInput {
  readonly runs: readonly OverlayRun[];
  readonly targetC: number;
  readonly holdS: number;
  readonly unit: TemperatureUnit;
  /** Written large across the picture's top when true. */
  readonly simulated: boolean;
}
