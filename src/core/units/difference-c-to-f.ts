import { FAHRENHEIT_PER_CELSIUS } from './exact-factors.ts';

/** A temperature difference in °C as °F of difference: d · 1.8, never + 32 (±2.2 °C is ±3.96 °F). */
export function differenceCToF(differenceC: number): number {
  return differenceC * FAHRENHEIT_PER_CELSIUS;
}

/** A temperature difference in °F as °C of difference: d ÷ 1.8. */
export function differenceFToC(differenceF: number): number {
  return differenceF / FAHRENHEIT_PER_CELSIUS;
}
