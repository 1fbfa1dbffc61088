import { FAHRENHEIT_AT_ZERO_C, FAHRENHEIT_PER_CELSIUS } from './exact-factors.ts';

/** A temperature in °C as °F: t · 1.8 + 32. For a difference use `differenceCToF`. Source: NIST SP 811, B.8. */
export function temperatureCToF(temperatureC: number): number {
  return temperatureC * FAHRENHEIT_PER_CELSIUS + FAHRENHEIT_AT_ZERO_C;
}

/** A temperature in °F as °C: (t − 32) ÷ 1.8. For a difference use `differenceFToC`. Source: NIST SP 811, B.8. */
export function temperatureFToC(temperatureF: number): number {
  return (temperatureF - FAHRENHEIT_AT_ZERO_C) / FAHRENHEIT_PER_CELSIUS;
}
