import type { ThermocoupleType } from '../wire/WireEvent.ts';
import { emfFromTemperatureUv } from './emf-from-temperature-uv.ts';
import { temperatureFromEmfC } from './temperature-from-emf-c.ts';

/**
 * Temperature in °C of a junction from the emf measured at the reader (µV) and the temperature of the reader's
 * own terminals (cold junction, °C). Compensated in emf: E(t) = measured + E(cold junction), then inverted; never by
 * adding temperatures, since the reference function is curved.
 * Refuses (ThermocoupleRangeError) a cold junction or a sum outside the type's range.
 */
export function compensatedTemperatureC(
  type: ThermocoupleType,
  emfUv: number,
  coldJunctionC: number,
): number {
  return temperatureFromEmfC(type, emfUv + emfFromTemperatureUv(type, coldJunctionC));
}
