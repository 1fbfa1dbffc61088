import { PressureError } from './PressureError.ts';

/** Throws unless the size is a finite number above 0. */
export function requireAboveZero(value: number, quantity: string, what: string, unit: string): void {
  if (Number.isFinite(value) && value > 0) return;
  throw new PressureError(
    'size-impossible',
    quantity,
    `${what} must be above 0 ${unit}, came ${value}`,
    `Measure the ${what} and give it with its unit`,
  );
}
