import { KELVIN_AT_ZERO_C } from '../units/exact-factors.ts';
import type { CureFacts } from './CureFacts.ts';

/** Molar gas constant, J/(mol·K). Exact since 2019 (SI). */
export const GAS_CONSTANT = 8.31446261815324;

/**
 * Speed of cure relative to that at the reference temperature: exp(−Ea/R·(1/T − 1/Tref)), T in kelvin; 1 at the
 * reference. Limited to the data sheet's range: 0 below it, held at its end above it.
 */
export function cureRate(
  { activationEnergyKjPerMol, referenceC, rangeC }: CureFacts,
  temperatureC: number,
): number {
  if (temperatureC < rangeC.from) return 0;
  return arrhenius(
    (activationEnergyKjPerMol * 1000) / GAS_CONSTANT,
    Math.min(temperatureC, rangeC.to),
    referenceC,
  );
}

/** exp(−Q·(1/T − 1/Tref)) with Q = Ea/R in kelvin; temperatures in °C. */
export function arrhenius(q: number, temperatureC: number, referenceC: number): number {
  return Math.exp(-q * (1 / (temperatureC + KELVIN_AT_ZERO_C) - 1 / (referenceC + KELVIN_AT_ZERO_C)));
}
