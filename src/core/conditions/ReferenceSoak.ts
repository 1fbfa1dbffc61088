/** Conditions that a trial's runs are put on for comparison, °C. Null = not known: no shift for it. */
export interface ReferenceConditions {
  readonly startC: number | null;
  /** Mean of the platens at closing. */
  readonly platenC: number | null;
}

/** A run's soak time as it would have been at the trial's reference conditions: beside the raw one, never instead. */
export interface ReferenceSoak {
  readonly soakAtReferenceS: number;
  /** Reference less raw, s. */
  readonly shiftS: number;
  readonly byStartS: number;
  readonly byPlatenS: number;
  /** Reference less the run's own, differences in °C; 0 where not known. */
  readonly startDifferenceC: number;
  readonly platenDifferenceC: number;
  readonly perStartC: number;
  readonly perPlatenC: number;
  /** Beyond this the run stands apart, s. */
  readonly limitS: number;
  readonly beyondLimit: boolean;
}
