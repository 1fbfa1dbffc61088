import type { CureFacts } from '../cure/CureFacts.ts';

/** A press and an assembly as the user describes them. Lengths in mm, pressures in psi, temperatures in °C. */
export interface Press {
  readonly name: string;
  readonly ramBoreMm: number | null;
  readonly ramRodMm: number | null;
  readonly rams: number;
  readonly gaugeDivisionPsi: number | null;
  readonly platenSetPointC: { readonly upper: number; readonly lower: number } | null;
  /** What starts the press's own timer. */
  readonly timerStartsAt: 'button' | 'closing';
  /** Seconds from that start to press closed (positive when the timer starts earlier). */
  readonly timerOffsetS: number;
  readonly timerStepS: number;
}

export interface Assembly {
  readonly name: string;
  readonly ringOuterDiameterMm: number | null;
  readonly ringInnerDiameterMm: number | null;
  readonly carrier: string | null;
  readonly targetC: number;
  readonly holdS: number;
  readonly adhesive: string | null;
  readonly dataSheetRevision: string | null;
  readonly highestDwellS: number | null;
  readonly highestPeakC: number | null;
  readonly leastRecoveryS: number | null;
  /** Net facing pressure that the ring wants, psi; absent or null: 200 to 250 psi (common practice, no source). */
  readonly netFacingPsi?: { readonly low: number; readonly high: number } | null;
  /** What the adhesive's data sheet says of its cure; absent or null where not entered. */
  readonly cure?: CureFacts | null;
}
