import { PressureError } from './PressureError.ts';

/** Throws unless the pressure is a finite number above 0 psi. */
export function requirePressure(quantity: string, pressurePsi: number): void {
  if (Number.isFinite(pressurePsi) && pressurePsi > 0) return;
  throw new PressureError(
    'pressure-impossible',
    quantity,
    `${quantity} must be above 0 psi, came ${pressurePsi}`,
    'Give the pressure with its unit, for example 120psi or 8.3bar',
  );
}

/** Throws unless the efficiency lies above 0 and at most at 1. */
export function requireShare(efficiency: number): void {
  if (efficiency > 0 && efficiency <= 1) return;
  throw new PressureError(
    'fraction-impossible',
    'efficiency',
    `efficiency must be above 0 and at most 1, came ${efficiency}`,
    'Give the share of the ram force that reaches the ring, for example 0.95',
  );
}

/** Throws unless the band rises from above 0. */
export function requireBand(band: { readonly low: number; readonly high: number }): void {
  if (band.low > 0 && band.high >= band.low && Number.isFinite(band.high)) return;
  throw new PressureError(
    'band-impossible',
    'bandPsi',
    `the band must rise from above 0 psi, came ${band.low} to ${band.high} psi`,
    'Give the lower end first, for example 200psi and 250psi',
  );
}
