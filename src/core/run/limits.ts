/**
 * Limits of run detection and of its checks that are not fields of RunRules. All are common practice or
 * judgement, no source, unless said otherwise; change them here, in one place.
 */
export const LIMITS = {
  /** A repeated mark or contact bounce within this is one, s. */
  repeatS: 1,
  /** A contact that lets go sooner than this is a pedal: no press closes and opens within it, s. */
  pedalTapS: 2,
  /** Nobody stands on a pedal for so long: a contact held longer is the press itself, s. */
  pedalHeldS: 20,
  /** How long a finished run waits for an undo, s of reading time. */
  undoS: 5,
  /** Readings kept while no run is open, s. */
  keptWhileWaitingS: 120,
  /** A record that goes on after an interruption must be quiet for so long before a rise of its own, s. */
  leastBaselineS: 3,
  /** Readings before press closed that belong to a run, s. */
  beforeClosingS: 60,
  /** Reaction of a hand at a key, s: standard uncertainty 0.15 (simple reaction time about 0.2 ± 0.1 s). */
  keyUncertaintyS: 0.15,
  /** Debounce and edge of a contact, s. */
  contactUncertaintyS: 0.02,
  /** A time given as an option, s. */
  optionUncertaintyS: 0.03,
  /** The heat may take this long through the part before the onset shows, s. */
  longestDelayS: 20,
  /** A gap over the crossing longer than this makes the run unusable, s. */
  gapAtCrossingS: 5,
  /** Crossing known worse than this is unusable after a gap or fault, s (standard uncertainty). */
  crossingUncertaintyS: 0.5,
  /** Readings on either side of the crossing that the final figure rests on, s. */
  nearCrossingS: 10,
  /** A gap is longer than this and than three sample intervals, s. */
  gapS: 1,
} as const;
