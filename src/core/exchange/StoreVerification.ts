/** Something in a store that is not as it was written. */
export interface StoreProblem {
  readonly kind:
    | 'database'
    | 'reference'
    | 'schema'
    | 'recording'
    | 'run-result'
    | 'kept-trace'
    | 'recipe'
    | 'cycle';
  /** What it is about: a recording's or recipe's name, a table. */
  readonly subject: string;
  readonly detail: string;
}

/** Outcome of checking a whole store. */
export interface StoreVerification {
  readonly path: string;
  /** Recordings looked at. */
  readonly recordings: number;
  /** Closed, and every byte is as its hash says. */
  readonly sound: number;
  /** Never closed, so there is no hash to prove them by; what is in them can be read. */
  readonly notClosed: readonly string[];
  readonly runResults: number;
  readonly recipes: number;
  /** Cycles of production. */
  readonly cycles: number;
  readonly problems: readonly StoreProblem[];
}
