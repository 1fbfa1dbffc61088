/** A bond line that cools, seen at a time. */
export interface CoolingPoint {
  readonly timeS: number;
  readonly temperatureC: number;
}

/** Whether the carrier is cool enough for the next run, and how long to wait if not. */
export type CoolingWait =
  | { readonly kind: 'cool'; readonly temperatureC: number }
  | {
      readonly kind: 'warm';
      readonly temperatureC: number;
      /** Warm above this, °C. */
      readonly limitC: number;
      /** Null: it cannot be said yet. */
      readonly wait: {
        readonly waitS: number;
        readonly earliestS: number;
        readonly latestS: number;
        readonly timeConstantS: number;
      } | null;
      readonly why: 'too-early' | 'not-cooling' | null;
    };
