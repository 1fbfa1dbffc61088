import { lengthText } from '../text/units-text.ts';
import { PressureError } from './PressureError.ts';
import { requireAboveZero } from './require-above-zero.ts';

/**
 * Area of the ring that carries load, mm²: π/4·(OD² − ID²), times the share of it that is land where the
 * ring is grooved or segmented. An inner diameter of 0 is a full disc. Refuses sizes of 0 or less, swapped
 * diameters and a land share outside 0 to 1. Example: 212 and 168 mm → 13132 mm².
 */
export function ringAreaMm2(ring: {
  readonly ringOuterDiameterMm: number;
  readonly ringInnerDiameterMm: number;
  readonly landFraction?: number;
}): number {
  const { ringOuterDiameterMm, ringInnerDiameterMm, landFraction = 1 } = ring;
  requireAboveZero(ringOuterDiameterMm, 'ringOuterDiameterMm', 'ring outer diameter', 'mm');
  if (ringInnerDiameterMm !== 0) {
    requireAboveZero(ringInnerDiameterMm, 'ringInnerDiameterMm', 'ring inner diameter', 'mm');
  }
  if (ringInnerDiameterMm >= ringOuterDiameterMm) {
    throw new PressureError(
      'diameters-swapped',
      'ringInnerDiameterMm',
      `ring inner diameter must be smaller than the outer, came inner ${lengthText(ringInnerDiameterMm)}, outer ${lengthText(ringOuterDiameterMm)}`,
      'Check whether the two diameters were swapped',
    );
  }
  if (!(landFraction > 0 && landFraction <= 1)) {
    throw new PressureError(
      'fraction-impossible',
      'landFraction',
      `land share of the ring must be above 0 and at most 1, came ${landFraction}`,
      'Give the share of the ring area that is not groove, for example 0.85',
    );
  }
  return (Math.PI / 4) * (ringOuterDiameterMm ** 2 - ringInnerDiameterMm ** 2) * landFraction;
}
