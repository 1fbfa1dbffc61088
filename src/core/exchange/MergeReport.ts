/** Something that both stores hold, differently. */
export interface MergeDifference {
  readonly kind: 'press' | 'assembly' | 'layout' | 'trial' | 'recording' | 'run-result' | 'cycle';
  readonly subject: string;
  /** What differs, as it stayed and as the other store has it. */
  readonly details: readonly { readonly what: string; readonly own: string; readonly other: string }[];
}

/** What merging another store into this one did. */
export interface MergeReport {
  readonly ownPath: string;
  readonly otherPath: string;
  readonly added: {
    readonly presses: number;
    readonly assemblies: number;
    readonly layouts: number;
    readonly trials: number;
    readonly recordings: number;
    /** Recordings that the other store holds further than this one did. */
    readonly continued: number;
    readonly runResults: number;
    readonly decisions: number;
    readonly recipes: number;
    /** Recipe versions taken out of use. */
    readonly withdrawals: number;
    /** Probes and what was later stated of them. */
    readonly probes: number;
    /** Cycles of production. */
    readonly cycles: number;
  };
  /** Own kept; to be looked at. */
  readonly differences: readonly MergeDifference[];
  /** Recipe versions that came in under another number, or were repeated to stay in force. */
  readonly renumbered: readonly {
    readonly assemblyName: string;
    readonly pressName: string;
    readonly from: number;
    readonly to: number;
    readonly why: 'number-taken' | 'stays-in-force';
  }[];
  /** Trials that came in under another id because theirs is taken by a trial of another assembly or press. */
  readonly renamedTrials: readonly { readonly from: string; readonly to: string }[];
}
