/** What a recipe's gauge pressure rests on: ring and ram as they were the day it was accepted. Lengths in mm, pressures in psi. */
export interface Pressing {
  /** Worked out for this ring and ram; confirmed at the gauge in a ready check; or stated by the person who accepts. */
  readonly gaugeBy: 'worked-out' | 'confirmed' | 'stated';
  /** Net facing pressure on the ring at the recipe's gauge pressure. */
  readonly netFacingPsi: number;
  readonly ringOuterDiameterMm: number;
  readonly ringInnerDiameterMm: number;
  readonly ramBoreMm: number;
  readonly ramRodMm: number | null;
  readonly rams: number;
}
