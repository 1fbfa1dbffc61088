import type { DwellRule, TrialStatistics } from '../trial/TrialResult.ts';
import type { ToleranceWish } from '../trial/tolerance-upper.ts';
import type { Pressing } from './Pressing.ts';
import type { Withdrawal } from './Withdrawal.ts';

/** What a trial proves, for one assembly on one press. A new acceptance makes a new version; none is ever changed. */
export interface Recipe {
  readonly assemblyName: string;
  readonly pressName: string;
  readonly version: number;
  readonly acceptedAt: string;
  readonly initials: string;
  readonly note: string;
  /** Resting on one run only. */
  readonly provisional: boolean;
  readonly platenSetPointC: { readonly upper: number; readonly lower: number } | null;
  readonly platenMeasuredC: { readonly upper: number | null; readonly lower: number | null };
  /** Ram gauge pressure that the recipe is made with; null where it was neither stated nor could be worked out. */
  readonly gaugePsi: number | null;
  /** What the gauge pressure rests on; absent where ring or ram were not known, and in older recipes. */
  readonly pressing?: Pressing | null;
  readonly targetC: number;
  readonly rule: DwellRule;
  /** Needed when a less strict rule than the pre-selected one was chosen. */
  readonly ruleReason: string | null;
  /** What the tolerance rule promised; only with that rule. */
  readonly tolerance?: ToleranceWish;
  readonly soakS: number;
  readonly holdS: number;
  readonly marginS: number;
  readonly dwellS: number;
  readonly dip: 'restarts' | 'pauses';
  readonly statistics: TrialStatistics;
  /** Runs it rests on: recording id and run number. */
  readonly restsOn: readonly { readonly recordingId: string; readonly runNumber: number }[];
  readonly adhesive: string | null;
  readonly dataSheetRevision: string | null;
  readonly highestDwellS: number | null;
  readonly highestPeakC: number | null;
  readonly leastRecoveryS: number | null;
  readonly runRuleVersion: number;
  readonly simulated: boolean;
  /** Taken out of use; stated beside the recipe, which stays as it was accepted. */
  readonly withdrawn?: Withdrawal | null;
}
