export interface EstimatePoint {
  readonly timeS: number;
  readonly temperatureC: number;
}

/** Time left until the bond line reaches its target, or why none can be said. */
export type TimeToTarget =
  | {
      readonly kind: 'estimate';
      /** From the latest point, s. */
      readonly restS: number;
      readonly earliestS: number;
      /** Null: by what is known so far the target may never be reached. */
      readonly latestS: number | null;
      /** Where the curve levels out, °C, and its time constant, s. */
      readonly plateauC: number;
      readonly timeConstantS: number;
    }
  | { readonly kind: 'none'; readonly why: 'too-early' | 'not-rising' | 'levels-out-below' };
