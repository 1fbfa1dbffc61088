import type { Crossing, PressClosed, RunReason, RunResult, TimeEstimate } from './RunResult.ts';

/** What the run tracker reports while readings come in, in the order it happened. */
export type RunEvent =
  | { readonly kind: 'press-closed'; readonly pressClosed: PressClosed }
  | { readonly kind: 'onset'; readonly onset: TimeEstimate }
  | { readonly kind: 'crossing-provisional'; readonly crossing: Crossing; readonly channel: number }
  | { readonly kind: 'crossing-final'; readonly crossing: Crossing | null; readonly channel: number }
  | { readonly kind: 'dip'; readonly fromS: number }
  | { readonly kind: 'hold-done'; readonly timeS: number }
  /** The contact let go at once: a pedal, no opening. */
  | { readonly kind: 'contact-let-go'; readonly timeS: number }
  /** A pedal's contact closed once more before the hold was done: what it means, a person must say. */
  | { readonly kind: 'contact-again'; readonly timeS: number }
  | { readonly kind: 'opening-hinted'; readonly timeS: number }
  | { readonly kind: 'opened'; readonly timeS: number }
  | { readonly kind: 'run-finished'; readonly result: RunResult };

/**
 * Where the present run stands; what a screen draws from.
 * waiting: no run open. heating: rising, target not reached.
 * crossed: at or above target, hold counting. dipped: below target again. hold-done. opened: run is being finished.
 */
export type RunPhase = 'waiting' | 'heating' | 'crossed' | 'dipped' | 'hold-done' | 'opened';

export interface RunState {
  readonly phase: RunPhase;
  readonly runNumber: number;
  readonly pressClosed: PressClosed | null;
  readonly onset: TimeEstimate | null;
  readonly provisionalCrossing: Crossing | null;
  readonly finalCrossing: Crossing | null;
  /** Hold counted so far, s. */
  readonly holdCountedS: number;
  /** Dips that began before the hold was done. */
  readonly holdDips?: number;
  /** False once a gap or fault lay inside the hold. */
  readonly holdSeen?: boolean;
  /** Equivalent time at the data sheet's reference temperature so far, s; absent where not stated. */
  readonly cureEquivalentS?: number;
  readonly spoilt: boolean;
  /** Reasons known so far. */
  readonly warnings: readonly RunReason[];
  readonly latestTimeS: number | null;
}
