import type { ThermocoupleType } from '../wire/WireEvent.ts';
import { forwardEmfMv, forwardPieceAt } from './forward-emf-mv.ts';
import { ITS90_TABLE } from './its90-table.ts';
import { ThermocoupleRangeError } from './ThermocoupleRangeError.ts';
import { temperatureRangeC } from './temperature-range-c.ts';

/**
 * emf in µV of a thermocouple whose junction is at `temperatureC` and whose reference junction is at 0 °C.
 * Refuses (ThermocoupleRangeError) a temperature outside the reference function or not finite.
 * Source: NIST SRD 60 / Monograph 175, ITS-90 reference functions.
 * Example: type K at 100 °C gives 4096 µV (table: 4.096 mV).
 */
export function emfFromTemperatureUv(type: ThermocoupleType, temperatureC: number): number {
  const range = temperatureRangeC(type);
  if (!(temperatureC >= range.lowest && temperatureC <= range.highest)) {
    throw new ThermocoupleRangeError({ type, quantity: 'temperature', value: temperatureC, ...range });
  }
  return 1000 * forwardEmfMv(forwardPieceAt(ITS90_TABLE[type].forward, temperatureC), temperatureC);
}
