/** How a cycle ended, the gravest first. 'left': not watched to the end, the program was left or stopped before the opening. */
export type CycleResult = 'done' | 'opened-early' | 'hold-not-verified' | 'platen-out-of-band' | 'left';

/** Everything noticed in a cycle; its result is the gravest of them. */
export type CycleFlag =
  | 'opened-early'
  | 'hold-not-verified'
  | 'platen-out-of-band'
  /** Bond line outside the band of the recipe's own runs for more than two seconds together. */
  | 'outside-recipe-band'
  | 'peak-above-limit'
  /** Closed sooner after the last opening than the recipe's least recovery. */
  | 'closed-too-soon'
  /** The program was left before the opening was seen. */
  | 'left'
  /** The program was stopped from outside (killed, no power) before the opening was seen. */
  | 'program-stopped';

/** Whether the hold at the bond line was seen whole. Without a probe it is not measured. */
export type HoldSeen = 'verified' | 'not-verified' | 'not-measured';

/** One closing of the press in production, as it is logged. Durations by a monotonic clock, s; temperatures in °C. */
export interface BondingCycle {
  readonly cycleId: string;
  readonly assemblyName: string;
  readonly pressName: string;
  readonly recipeVersion: number;
  /** Raw readings; null without a reader. */
  readonly recordingId: string | null;
  readonly simulated: boolean;
  readonly initials: string | null;
  /** Wall time of press closed, ISO 8601: a label, never used for durations. */
  readonly closedAt: string;
  readonly closedBy: 'key' | 'contact';
  readonly dwellWantedS: number;
  /** Press closed to opened; where the opening was not seen, to the last moment that was watched. */
  readonly dwellHeldS: number;
  readonly targetC: number;
  readonly holdWantedS: number;
  readonly holdCountedS: number | null;
  readonly hold: HoldSeen;
  readonly platensAtClosingC: { readonly upper: number | null; readonly lower: number | null };
  /** Lowest bond line after the crossing, and peak; null where not measured or not reached. */
  readonly lowestC: number | null;
  readonly peakC: number | null;
  /** Against the band of the recipe's own runs; absent in cycles of earlier programs. */
  readonly againstBand?: 'inside' | 'outside' | 'not-compared';
  /** Press closed on the recording's own time, s; absent or null where not known. */
  readonly recordedAtS?: number | null;
  readonly result: CycleResult;
  readonly flags: readonly CycleFlag[];
}

/** A cycle as the reducer knows it: on the link's clock, without id and wall time. */
export interface CycleFacts
  extends Omit<
    BondingCycle,
    | 'cycleId'
    | 'closedAt'
    | 'recordingId'
    | 'simulated'
    | 'initials'
    | 'assemblyName'
    | 'pressName'
    | 'recipeVersion'
  > {
  /** Of the link's clock, µs. */
  readonly closedUs: number;
}
