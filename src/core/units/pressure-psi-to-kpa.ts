import { PA_PER_PSI } from './exact-factors.ts';

/** A pressure in psi as kPa. */
export function pressurePsiToKpa(pressurePsi: number): number {
  return (pressurePsi * PA_PER_PSI) / 1000;
}
