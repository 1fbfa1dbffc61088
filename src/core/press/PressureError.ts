import { DwellwrightError } from '../DwellwrightError.ts';

export type PressureErrorCode =
  | 'size-impossible'
  | 'diameters-swapped'
  | 'size-missing'
  | 'pressure-impossible'
  | 'fraction-impossible'
  | 'band-impossible'
  | 'rams-impossible';

/** Sizes or pressures that no press and ring can have, or one that is missing. */
export class PressureError extends DwellwrightError {
  override readonly name = 'PressureError';
  /** Which quantity, by the name of its input: `ringOuterDiameterMm`. */
  readonly quantity: string;

  constructor(code: PressureErrorCode, quantity: string, message: string, remedy: string) {
    super(code, message, { remedy });
    this.quantity = quantity;
  }
}
