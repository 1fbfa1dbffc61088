import type { RecordingTrace } from '../figure/RunTrace.ts';
import type { Assembly, Press } from '../press/Press.ts';
import type { PressureResult } from '../press/PressureResult.ts';
import type { Probe } from '../probe/Probe.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import type { RecordingHead, RecordingSoundness } from '../recording/RecordingEntry.ts';
import type { TrialOutcome } from '../result/trial-outcome.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import type { ReportSection } from './ReportContent.ts';

/** A recording that runs of the trial come from. */
export interface ReportRecording {
  /** File name, or id in the store. */
  readonly name: string;
  readonly head: RecordingHead | null;
  readonly trace: RecordingTrace;
  readonly soundness: RecordingSoundness;
  /** SHA-256 of the recording's file, byte for byte, in hexadecimal. */
  readonly sha256: string;
}

export interface ReportJob {
  readonly trialId: string | null;
  readonly startedAt: string | null;
  readonly assemblyName: string | null;
  readonly pressName: string | null;
  /** As kept in the store, where it is. */
  readonly assembly: Assembly | null;
  readonly press: Press | null;
  readonly platenSetPointC: { readonly upper: number; readonly lower: number } | null;
  readonly ambientC: number | null;
  /** From the gauge pressure that was set, or for the wanted band where none was stated; null without ring and ram. */
  readonly pressure: PressureResult | null;
  /** True when the gauge pressure was stated, false when `pressure` only shows the band. */
  readonly gaugeStated: boolean;
  /** As stated, psi. */
  readonly gaugePsi: number | null;
  readonly operators: readonly string[];
  readonly simulated: boolean;
  readonly recipes: readonly Recipe[];
}

export interface TrialReportInput {
  readonly job: ReportJob;
  readonly outcome: TrialOutcome;
  /** Where each run of `outcome.runs` was recorded, by position: an index into `recordings`, or null. */
  readonly recordingOfRun: readonly (number | null)[];
  readonly recordings: readonly ReportRecording[];
  /** Probes that the recordings name, each once. */
  readonly probes: readonly Probe[];
  /** Equipment as stated by people: probe, reader, gauge, with calibration dates. */
  readonly equipment: readonly string[];
  readonly note: string | null;
  /** Re-check, comparison, bonded lot: placed before equipment, each where there is one. */
  readonly furtherSections: readonly ReportSection[];
  readonly unit: TemperatureUnit;
  readonly madeAt: string;
  readonly program: string;
}
