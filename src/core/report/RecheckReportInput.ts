import type { OverlayInput } from '../figure/OverlayInput.ts';
import type { Probe } from '../probe/Probe.ts';
import type { DwellAtTarget } from '../recheck/dwell-at-target.ts';
import type { Recheck } from '../recheck/RecheckResult.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import type { TrialOutcome } from '../result/trial-outcome.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import type { ReportRecording } from './TrialReportInput.ts';

export interface RecheckReportInput {
  readonly recipe: Recipe;
  readonly result: Recheck;
  /** What the runs would suggest now. */
  readonly outcome: TrialOutcome;
  readonly byTarget: readonly DwellAtTarget[];
  /** Day and time at which each run was made, by position; null where not known. */
  readonly madeAt: readonly (string | null)[];
  /** All runs with their traces; null where they are too many to be told apart. */
  readonly overlay: OverlayInput | null;
  readonly recordings: readonly ReportRecording[];
  readonly probes: readonly Probe[];
  readonly equipment: readonly string[];
  /** Why the recipe is to be proved anew, in words; empty where nothing asks for it. */
  readonly reProof: readonly string[];
  readonly note: string | null;
  readonly simulated: boolean;
  readonly unit: TemperatureUnit;
  readonly reportedAt: string;
  readonly program: string;
}
