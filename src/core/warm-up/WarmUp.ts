import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { Samples } from '../run/collect-samples.ts';
import type { ReadyRule } from './ReadyRule.ts';

/** Bumped whenever a figure of the same recording could change. */
export const WARM_UP_RULE_VERSION = 2;

/** A value and its standard uncertainty, in the unit of the name it stands under. */
export interface WithUncertainty {
  readonly value: number;
  readonly standardUncertainty: number;
}

/** What a warm-up is judged by. Temperatures and differences in °C, times in s. */
export interface WarmUpRules {
  /** Set points; null where unknown: then everything that counts from a set point is left out. */
  readonly setPointC: { readonly upper: number; readonly lower: number } | null;
  readonly ready: ReadyRule;
  /** A dip deeper than this is a cold part; recovered is back within it. Widened where the ripple is larger. */
  readonly recoveryBandC: number;
  /** A dip counts only after the platen was quiet for so long, so that a swing of the settling is none. */
  readonly quietS: number;
}

/** A platen channel of a recording: spikes taken out, faults and missing values left out. */
export interface PlatenTrace {
  readonly channel: number;
  readonly role: ChannelRole;
  readonly label: string;
  readonly setPointC: number | null;
  readonly samples: Samples;
  readonly spikes: number;
  readonly faults: number;
}

/** A part laid in, as contact or key told, s from the recording's first reading. */
export interface Closing {
  readonly timeS: number;
  readonly by: 'contact' | 'mark';
}

/** When the heaters were switched on, s from the recording's first reading. */
export interface PowerOn {
  readonly timeS: number;
  readonly by: 'stated' | 'note' | 'rise';
}

/** The stretch before the controller throttles: T = end + (start − end)·exp(−(t − delay)/τ). */
export interface FullPower {
  /** From power-on, s. */
  readonly fromS: number;
  readonly toS: number;
  /** Null where the stretch is too short against the time constant to tell it from a straight line. */
  readonly timeConstantS: WithUncertainty | null;
  /** Dead time and small lags together, from power-on; null where power-on is only known from the rise. */
  readonly delayS: WithUncertainty | null;
  /** Where the fitted curve leaves the start temperature, s from power-on. */
  readonly departsS: WithUncertainty;
  /** Heating rate where the curve leaves the start temperature, °C/s. */
  readonly firstRateCPerS: WithUncertainty;
  readonly rmsC: number;
  /** The stretch follows one curve only roughly. */
  readonly rough: boolean;
}

/** The swing that a switching heater leaves once settled. */
export interface Ripple {
  readonly amplitudeC: number;
  readonly periodS: number;
}

export interface Recovery {
  /** From power-on, s. */
  readonly partInS: number;
  readonly by: 'contact' | 'mark' | 'trace';
  readonly depthC: number;
  readonly lowestAfterS: number;
  /** Part in to back within `withinC` of the level, and staying; null when it did not come back. */
  readonly recoveryTimeS: number | null;
  readonly withinC: number;
}

/** One platen channel's warm-up. Times from power-on in s, temperatures in °C, differences in °C. */
export interface ChannelWarmUp {
  readonly channel: number;
  readonly role: ChannelRole;
  readonly label: string;
  readonly setPointC: number | null;
  readonly startC: number;
  readonly largestRateCPerS: number;
  readonly largestRateAtS: number;
  readonly fullPower: FullPower | null;
  /** First inside the band of the set point, and inside it to stay. */
  readonly reachesBandS: number | null;
  readonly staysInBandS: number | null;
  /** 10 % to 90 % of the way from start to steady level. */
  readonly riseTimeS: number | null;
  /** Inside the band of the own steady level to stay. */
  readonly settlingTimeS: number | null;
  readonly peakC: number;
  readonly peakAtS: number;
  /** Peak above the steady level; 0 where none stands out of the ripple. */
  readonly overshootC: number | null;
  readonly overshootPercent: number | null;
  /** Figures of the steady stretch, the latter half of the time between settling and the first cold part. */
  readonly steady: SteadyStretch | null;
  readonly recoveries: readonly Recovery[];
  readonly readyAtS: number | null;
  readonly noiseC: number;
  readonly spikes: number;
  readonly faults: number;
}

export interface SteadyStretch {
  readonly fromS: number;
  readonly toS: number;
  readonly levelC: number;
  /** Level less set point. */
  readonly meanOffsetC: number | null;
  readonly driftCPerHour: WithUncertainty;
  /** Null where no swing stands out of the noise. */
  readonly ripple: Ripple | null;
}

export interface PlatenDifference {
  /** Upper less lower over the steady stretch both share. */
  readonly steadyC: number | null;
  readonly largestWhileHeatingC: number;
  readonly largestAtS: number;
}

export type WarmUpCaution =
  | 'began-hot'
  | 'heating-had-begun'
  | 'not-settled'
  | 'still-drifting'
  | 'no-full-power-stretch'
  | 'full-power-rough'
  | 'power-on-from-rise'
  | 'gaps'
  | 'no-set-point';

export interface WarmUp {
  readonly ruleVersion: number;
  readonly powerOn: PowerOn;
  readonly endedS: number;
  readonly channels: readonly ChannelWarmUp[];
  readonly difference: PlatenDifference | null;
  /** All platens ready by the rule, from power-on; null when they never were. */
  readonly readyAtS: number | null;
  readonly rules: WarmUpRules;
  readonly cautions: readonly WarmUpCaution[];
  /** Times without readings, s. */
  readonly gaps: readonly { readonly fromS: number; readonly toS: number }[];
}
