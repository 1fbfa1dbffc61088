import type { TrialRun } from '../../core/trial/TrialResult.ts';

export interface GatheredRun {
  readonly run: TrialRun;
  /** As it was stored; null for files. */
  readonly before: TrialRun['result'] | null;
}

export interface Gathered {
  readonly runs: readonly GatheredRun[];
  /** The same recordings at each of the targets asked for. */
  readonly atTargets: readonly (readonly TrialRun[])[];
}
