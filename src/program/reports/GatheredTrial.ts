import type { Probe } from '../../core/probe/Probe.ts';
import type { ReportJob, ReportRecording } from '../../core/report/TrialReportInput.ts';
import type { TrialOutcome } from '../../core/result/trial-outcome.ts';

/** All that a report or a chart of a trial needs, from files or from the store. */
export interface GatheredTrial {
  readonly outcome: TrialOutcome;
  readonly probes: readonly Probe[];
  readonly recordings: readonly ReportRecording[];
  readonly recordingOfRun: readonly (number | null)[];
  readonly job: ReportJob;
}
