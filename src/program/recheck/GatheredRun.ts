import type { Probe } from '../../core/probe/Probe.ts';
import type { MadeOn } from '../../core/recheck/recheck-run.ts';
import type { TrialRun } from '../../core/trial/TrialResult.ts';

export interface GatheredRun {
  readonly run: TrialRun;
  /** As it was stored; null for files. */
  readonly before: TrialRun['result'] | null;
  readonly recordingId: string;
  readonly madeOn: MadeOn;
}

export interface Gathered {
  readonly runs: readonly GatheredRun[];
  /** Probes that gave the crossings: each recording's own. */
  readonly probes: readonly Probe[];
  /** The same recordings at each of the targets asked for. */
  readonly atTargets: readonly (readonly TrialRun[])[];
}
