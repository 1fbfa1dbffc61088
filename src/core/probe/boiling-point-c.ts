import { KELVIN_AT_ZERO_C } from '../units/exact-factors.ts';
import { ProbeError } from './ProbeError.ts';

/** Coefficients n1 … n10 of the saturation line (region 4). Source: IAPWS-IF97 (R7-97, 2012), Table 34. */
const N = [
  0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7,
  0.1491510861353e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
] as const;

/** Air pressure on land, from a deep mine to the highest road, kPa. */
const RANGE_KPA = { least: 40, most: 115 } as const;

/** Standard atmosphere, kPa (exact). Boiling water: 99.97 °C. */
export const STANDARD_AIR_PRESSURE_KPA = 101.325;

/** Temperature of melting ice in air, °C (IPTS: 0.00; a well-made bath holds it within 0.01 °C). */
export const ICE_POINT_C = 0;

/**
 * Boiling point of water at an air pressure (absolute, kPa), °C: saturation temperature of IAPWS-IF97, equation 31.
 * Refuses a pressure outside 40 to 115 kPa: it is none of the air where people work. Example: 101.325 → 99.97.
 */
export function boilingPointC(airPressureKpa: number): number {
  if (!(airPressureKpa >= RANGE_KPA.least && airPressureKpa <= RANGE_KPA.most)) {
    throw new ProbeError(
      'pressure-out-of-range',
      `air pressure must lie between ${RANGE_KPA.least} and ${RANGE_KPA.most} kPa, came ${airPressureKpa} kPa`,
      'Give the pressure at the place itself, not reduced to sea level, such as 985mbar',
    );
  }
  return saturationTemperatureK(airPressureKpa / 1000) - KELVIN_AT_ZERO_C;
}

/** Saturation temperature, K, at a pressure in MPa. Source: IAPWS-IF97 (R7-97, 2012), equation 31. */
export function saturationTemperatureK(pressureMpa: number): number {
  const beta = pressureMpa ** 0.25;
  const e = beta * beta + N[2] * beta + N[5];
  const f = N[0] * beta * beta + N[3] * beta + N[6];
  const g = N[1] * beta * beta + N[4] * beta + N[7];
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g));
  return (N[9] + d - Math.sqrt((N[9] + d) ** 2 - 4 * (N[8] + N[9] * d))) / 2;
}
