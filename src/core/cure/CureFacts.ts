/**
 * What the adhesive's data sheet says of its cure, as the user enters it. No adhesive's values are known to the tool.
 */
export interface CureFacts {
  readonly activationEnergyKjPerMol: number;
  /** Temperature that the equivalent time is stated at. */
  readonly referenceC: number;
  /** Temperatures that the data sheet holds for; outside them nothing is claimed. */
  readonly rangeC: { readonly from: number; readonly to: number };
}

/** Cure of one run from its trace, press closed only; coldest bond-line channel. */
export interface CureResult extends CureFacts {
  /** Equivalent time at the reference temperature, s. */
  readonly equivalentS: number;
  /** Below the data sheet's range: not counted. */
  readonly belowRangeS: number;
  /** Above it: counted at the rate of the range's end. */
  readonly aboveRangeS: number;
  /** Gaps and faults that were not bridged; the true figure may be higher. */
  readonly missingS: number;
}
