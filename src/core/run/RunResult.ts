import type { CureFacts, CureResult } from '../cure/CureFacts.ts';
import type { RunFit } from '../heating-fit/run-fit.ts';
import type { RunConditions } from '../reading/StreamEvent.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';

/** Version of the rules that turn readings into a run's result. Raise it when any computed number may change. */
export const RUN_RULE_VERSION = 2;

/** Settings of run detection; every one may be changed by the user. Times in s, temperatures in °C. */
export interface RunRules {
  readonly targetC: number;
  readonly holdS: number;
  /** Below target for longer than this counts as a dip. */
  readonly longestDipS: number;
  /** What a dip does to the hold. */
  readonly dip: 'restarts' | 'pauses';
  /** Platen set point where known; used by checks. */
  readonly platenSetPointC: { readonly upper: number; readonly lower: number } | null;
  /** Room or reference start temperature; a start further above than `warmCarrierLimitC` is "carrier warm". */
  readonly ambientC: number | null;
  readonly warmCarrierLimitC: number;
  /** Two sources of "press closed" further apart than this are flagged. */
  readonly closingDisagreementLimitS: number;
  /** Press closed given from outside (option), seconds from the first reading. */
  readonly closedAtS: number | null;
  /**
   * 'left-out': the recording goes on after an interruption, so a rise that is under way when it begins belongs to a
   * run whose closing it has not seen. Absent: such a rise is a run timed from the first reading, and flagged.
   */
  readonly riseUnderWay?: 'left-out';
  /** What the adhesive's data sheet says of its cure; absent where not stated. */
  readonly cure?: CureFacts | null;
  /** Highest bond-line temperature allowed; absent where not stated. */
  readonly highestPeakC?: number | null;
}

export type ClosingSource = 'contact' | 'key' | 'option' | 'onset';

export interface TimeEstimate {
  /** Seconds from the recording's first reading. */
  readonly timeS: number;
  readonly standardUncertaintyS: number;
}

export interface PressClosed extends TimeEstimate {
  readonly by: ClosingSource;
  /** Every source that exists, the chosen one among them. */
  readonly all: readonly (TimeEstimate & { readonly by: ClosingSource })[];
  /** Largest difference between two sources; null with one. Onset counts only against a limit of its own. */
  readonly disagreementS: number | null;
}

export interface Crossing extends TimeEstimate {
  /** Heating rate at the crossing, °C/s. */
  readonly slopeCPerS: number;
}

export interface ChannelCrossing {
  readonly channel: number;
  readonly role: ChannelRole;
  readonly crossing: Crossing | null;
}

export interface HoldResult {
  readonly wantedS: number;
  /** Time counted towards the hold between crossing and opening, by the dip rule. */
  readonly countedS: number;
  readonly longestUnbrokenS: number;
  readonly totalAboveS: number;
  /** Met and seen: no gap or fault inside it. */
  readonly verified: boolean;
  readonly dips: readonly { readonly fromS: number; readonly toS: number; readonly lowestC: number }[];
}

export type Verdict = 'good' | 'suspect' | 'unusable';

/**
 * Grouped by their usual severity; the reason itself says which it has in this run. `from-onset` is a note (the trial
 * keeps such runs apart from marked ones) and suspect only where the record begins inside the rise of a warm part;
 * `probe-open-circuit` is suspect or a note where another bond-line channel, or the crossing itself, is sound;
 * `gap-near-crossing` is suspect, `gap-at-crossing` and `fault-at-crossing` are unusable.
 */
export type RunReasonCode =
  // unusable
  | 'target-never-reached'
  | 'no-press-closed'
  | 'gap-at-crossing'
  | 'fault-at-crossing'
  | 'probe-open-circuit'
  | 'probe-on-platen'
  | 'plug-reversed'
  | 'spoilt'
  | 'started-above-target'
  | 'no-readings'
  // suspect
  | 'carrier-warm'
  | 'slow-rise'
  | 'platen-low'
  | 'opened-early'
  | 'late-mark'
  | 'marks-disagree'
  | 'uneven-bond-line'
  | 'probe-not-at-bond-line'
  | 'wrong-thermocouple-type'
  | 'second-junction'
  | 'extension-reversed'
  | 'ground-shift'
  | 'interference'
  | 'from-onset'
  /** Suspect where a probe was at fault as the press closed; else a note. */
  | 'ready-check-not-passed'
  | 'gap-near-crossing'
  | 'clock-drift'
  | 'clock-backwards'
  /** Only inside a trial: made under other conditions than the rest. */
  | 'off-reference'
  // notes (never change the verdict)
  | 'gap'
  | 'clock-apart'
  | 'reader-restarted'
  | 'hold-dipped'
  | 'peak-above-limit'
  | 'hold-not-verified'
  | 'recording-not-closed'
  | 'recording-altered'
  | 'noisy';

export interface RunReason {
  readonly code: RunReasonCode;
  readonly severity: 'unusable' | 'suspect' | 'note';
  /** Figures for the sentence, unit in the key (`startC`, `limitC`, `gapS`). */
  readonly facts: Readonly<Record<string, number | string>>;
}

export interface RunResult {
  readonly ruleVersion: number;
  /** 1, 2, … within its recording. */
  readonly runNumber: number;
  readonly pressClosed: PressClosed | null;
  readonly onset: TimeEstimate | null;
  readonly provisionalCrossing: Crossing | null;
  /** Final crossing of the slowest bond-line channel. */
  readonly crossing: Crossing | null;
  readonly crossings: readonly ChannelCrossing[];
  /** crossing − press closed; null when either is missing. */
  readonly soakTimeS: number | null;
  /** Standard uncertainty from crossing and closing (per-run part only). */
  readonly soakTimeStandardUncertaintyS: number | null;
  readonly openedS: number | null;
  readonly endedS: number;
  readonly startC: number | null;
  readonly peakC: number | null;
  readonly lowestAfterCrossingC: number | null;
  readonly hold: HoldResult | null;
  /** Measured at closing; null where no such channel. */
  readonly platenAtClosingC: { readonly upper: number | null; readonly lower: number | null };
  readonly conditions: RunConditions;
  readonly notes: readonly string[];
  readonly verdict: Verdict;
  /** Reasons that change the verdict, gravest first; then notes. */
  readonly reasons: readonly RunReason[];
  /** Heating curve of the crossing's channel; null where none fits, absent in results of earlier versions. */
  readonly fit?: RunFit | null;
  /** Cure by the data sheet's figures; null where they are not stated. */
  readonly cure?: CureResult | null;
}
