import type { Assembly } from './Press.ts';
import { NET_FACING_BAND_PSI } from './pressure.ts';

/** Lowest and highest net facing pressure on the ring, psi; the same twice where one value is stated. */
export interface NetFacingBand {
  readonly low: number;
  readonly high: number;
}

/** What an assembly's ring wants: its own band, else 200 to 250 psi (common practice, no source). */
export function netFacingBand(assembly: Pick<Assembly, 'netFacingPsi'> | null): NetFacingBand {
  return assembly?.netFacingPsi ?? NET_FACING_BAND_PSI;
}

/** The pressure to set: the middle of the band, psi. */
export function middleOfBand({ low, high }: NetFacingBand): number {
  return (low + high) / 2;
}
