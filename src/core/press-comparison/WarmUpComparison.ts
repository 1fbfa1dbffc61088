import type { ChannelRole } from '../recording/RecordingEntry.ts';
import type { WarmUp } from '../warm-up/WarmUp.ts';
import type { FigureKind } from '../warm-up/warm-up-figures.ts';

/** One side of a comparison: a press, or one press before or after, with its warm-ups. */
export interface ComparedSide {
  readonly name: string;
  readonly warmUps: readonly WarmUp[];
}

/** One figure of one platen on both sides; units by kind (s, °C, °C/s, °C/h, %). */
export interface ComparedFigure {
  readonly role: ChannelRole;
  readonly key: string;
  readonly kind: FigureKind;
  /** Null where a warm-up does not tell it. */
  readonly first: readonly (number | null)[];
  readonly second: readonly (number | null)[];
  readonly firstMean: number | null;
  readonly secondMean: number | null;
  /** Second less first; null where a side tells nothing. */
  readonly difference: number | null;
  /** 95 % interval (Welch); null where a side has under two warm-ups that tell the figure. */
  readonly interval: {
    readonly low: number;
    readonly high: number;
    readonly degreesOfFreedom: number;
  } | null;
  /** The interval does not hold 0. */
  readonly standsOut: boolean;
}

export interface WarmUpComparison {
  readonly first: ComparedSide;
  readonly second: ComparedSide;
  readonly figures: readonly ComparedFigure[];
  /** Without repeats no difference has an interval. */
  readonly repeated: boolean;
  /** The two sides were not judged by the same band, time or set point. */
  readonly rulesDiffer: boolean;
}
