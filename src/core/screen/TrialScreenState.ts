import type { ChartBandPoint, ChartMark } from '../chart/ChartSpec.ts';
import type { TraceBuckets } from '../chart/TraceBuckets.ts';
import type { CoolingWait } from '../cooling/CoolingWait.ts';
import type { PressureResult } from '../press/PressureResult.ts';
import type { Reading } from '../reading/StreamEvent.ts';
import type { ReadyItemName } from '../ready-check/ReadyCheck.ts';
import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { TrialOutcome } from '../result/trial-outcome.ts';
import type { RunResult, RunRules } from '../run/RunResult.ts';
import type { TimeToTarget } from '../run-estimate/TimeToTarget.ts';
import type { SessionState } from '../session/Session.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import type { DwellRule, TrialRun, TrialStatistics } from '../trial/TrialResult.ts';
import type { FinishedRun } from './FinishedRun.ts';
import type { ReplayPace } from './pace.ts';
import type { InputBuffer } from './ScreenInput.ts';

/** What stays the same during a trial. */
export interface TrialScreenSetup {
  readonly assemblyName: string;
  readonly pressName: string;
  /** Channel 1 first. */
  readonly roles: readonly ChannelRole[];
  readonly rules: RunRules;
  readonly simulated: boolean;
  /** True when a stored run is shown again, at `speed` first. @default false */
  readonly replay?: boolean;
  /** Reader or port for the status line, already neutralised. */
  readonly readerName: string;
  readonly storePath: string;
  readonly unit: TemperatureUnit;
  readonly marginS: number;
  readonly timerStepS: number;
  readonly timerOffsetS: number;
  /** True when this shift has acknowledged the cautions before. */
  readonly cautionsAcknowledged: boolean;
  /** Seconds of the readings' clock in one second; other than 1 only in a simulation or replay. @default 1 */
  readonly speed?: number;
  /** Id of the recording that the live runs go into; tells them from the trial's earlier ones. */
  readonly recordingId?: string;
  /** True where a person works the press: the ready check comes before each run. */
  readonly readyCheck?: boolean;
  /** Gauge pressure of this ring on this ram; null where a size is not known. */
  readonly gauge?: PressureResult | null;
  /** Offered when initials are asked for. */
  readonly initials?: string | null;
}

export type LinkStatus =
  | { readonly kind: 'opening' }
  | { readonly kind: 'open' }
  | { readonly kind: 'lost'; readonly sinceUs: number; readonly cause: string };

export interface StoreStatus {
  /** 99th percentile from arrival to on disk, ms; null before the first commit. */
  readonly p99Ms: number | null;
  readonly freeBytes: number | null;
  /** Set when the store cannot write. */
  readonly trouble: string | null;
}

/** The trial as the program has worked it out from all its runs. */
export interface TrialStanding {
  readonly runs: readonly TrialRun[];
  readonly statistics: TrialStatistics | null;
  /** The whole outcome with every rule's dwell and the uncertainty budget; absent until worked out. */
  readonly outcome?: TrialOutcome | null;
}

/** What the ready check has been told for the next run. */
export interface ReadyAnswers {
  readonly confirmed: readonly ReadyItemName[];
  readonly overridden: Readonly<Partial<Record<ReadyItemName, string>>>;
  /** What stood there when a person went over it, in words: it may have been put right since. */
  readonly foundThen?: Readonly<Partial<Record<ReadyItemName, string>>>;
  /** Gone through to its end. */
  readonly done: boolean;
}

/** A question or entry that has the keys for itself. */
export type Dialog =
  | { readonly kind: 'cautions' }
  | { readonly kind: 'note'; readonly text: string }
  | { readonly kind: 'spoilt'; readonly text: string }
  | { readonly kind: 'quit' }
  /** Press closed once more in a marked run. `heating`: the target was not reached yet, so that the mark may be corrected. */
  | {
      readonly kind: 'closed-again';
      readonly by: 'key' | 'pedal' | 'contact';
      readonly askedUs: number;
      readonly heating: boolean;
    }
  /** A mark of some seconds ago is to be taken back. */
  | { readonly kind: 'undo'; readonly what: MarkTaken; readonly askedUs: number }
  /** Why the press closed over a line of the ready check that was not in order. */
  | { readonly kind: 'not-passed'; readonly text: string }
  | { readonly kind: 'runs'; readonly selected: number }
  | {
      readonly kind: 'decision';
      readonly run: number;
      readonly decision: 'set-aside' | 'taken-in';
      readonly text: string;
    }
  | { readonly kind: 'accept-rule'; readonly rule: DwellRule }
  | { readonly kind: 'accept-reason'; readonly rule: DwellRule; readonly text: string }
  | {
      readonly kind: 'accept-initials';
      readonly rule: DwellRule;
      readonly ruleReason: string | null;
      readonly text: string;
    }
  | {
      readonly kind: 'accept-note';
      readonly rule: DwellRule;
      readonly ruleReason: string | null;
      readonly initials: string;
      readonly text: string;
    }
  /** The ready check; `selected` null: the first line that holds something up. */
  | { readonly kind: 'ready'; readonly selected: ReadyItemName | null }
  | { readonly kind: 'ready-reason'; readonly item: ReadyItemName; readonly text: string }
  | { readonly kind: 'result' }
  | { readonly kind: 'budget' }
  | { readonly kind: 'overlay' }
  /** `over`: the page or question that comes back; `scroll`: rows left out above, where it is longer than the window. */
  | { readonly kind: 'help'; readonly over?: Dialog | null; readonly scroll?: number };

export type MarkTaken = 'press-closed' | 'opened' | 'spoilt';

/** A mark that was taken back and can be put back, at its own moment, µs. */
export type TakenBack =
  | { readonly kind: 'press-closed' | 'opened'; readonly atUs: number }
  | { readonly kind: 'spoilt'; readonly reason: string };

export interface Notice {
  readonly text: string;
  readonly tone: 'quiet' | 'good' | 'caution';
  /** Stands in block letters instead of the next action: what must not be missed from two metres. */
  readonly large?: string;
  readonly untilUs: number;
}

export interface TrialScreenState {
  readonly setup: TrialScreenSetup;
  readonly unit: TemperatureUnit;
  /** Host monotonic clock, µs. */
  readonly nowUs: number;
  readonly link: LinkStatus;
  readonly store: StoreStatus | null;
  readonly session: SessionState | null;
  readonly latest: Reading | null;
  readonly latestUs: number | null;
  /** The reading whose figures are shown; replaced at most four times a second. */
  readonly shown: Reading | null;
  readonly shownUs: number;
  readonly intervalS: number | null;
  readonly trace: TraceBuckets;
  readonly marks: readonly ChartMark[];
  /** Readings of the latest seconds while no run is open, for the ready check. */
  readonly recent: readonly Reading[];
  readonly cooling: CoolingWait | null;
  readonly ready: ReadyAnswers;
  /** Reasons given in this trial to go on anyway, by item: offered again before the next run. */
  readonly reasonsGiven: Readonly<Partial<Record<ReadyItemName, string>>>;
  /** Confirmed in the latest ready check that asked for it. */
  readonly gaugePsi: number | null;
  /** Bond-line traces of the trial's finished runs, counted from press closed. */
  readonly finished: readonly FinishedRun[];
  /** Lowest and highest of the trial's earlier runs that count, from press closed; drawn behind. */
  readonly band: readonly ChartBandPoint[];
  readonly estimate: TimeToTarget | null;
  /** Number of the run that the marks and flags below belong to. */
  readonly runNumber: number | null;
  readonly crossedS: number | null;
  readonly holdDone: boolean;
  /** Readings stopped or a bond-line probe failed while the hold counted. */
  readonly holdUnseen: boolean;
  readonly lastResult: RunResult | null;
  readonly standing: TrialStanding;
  /** The table between two runs is scrolled back by so many runs. */
  readonly runsBack: number;
  readonly dialog: Dialog | null;
  readonly input: InputBuffer;
  /** When each mark key was last taken, µs; `latest`: any mark, `enter`: Enter in the ready check. */
  readonly markKeyUs: Readonly<Record<string, number>>;
  /** Marks of this run that can be taken back, the latest last. */
  readonly marksTaken: readonly MarkTaken[];
  /** Moments of press closed in this run, µs, the one that holds last; those before it were corrected. */
  readonly closedMarksUs: readonly number[];
  /** The mark taken back last in this run; null once it stands again or another took its place. */
  readonly takenBack: TakenBack | null;
  readonly spoiltReason: string | null;
  /** What the ready check found out of order as the press closed, until a person says why it went on; null: nothing. */
  readonly notPassed: string | null;
  readonly notice: Notice | null;
  readonly flashUntilUs: number;
  /** How the stored run goes by; null where the press is live. */
  readonly pace: ReplayPace | null;
  /** A stored run shown again has come to its end. */
  readonly replayOver: boolean;
}
