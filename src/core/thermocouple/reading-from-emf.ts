import type { ReadingValue } from '../reading/StreamEvent.ts';
import type { ThermocoupleType } from '../wire/WireEvent.ts';
import { emfFromTemperatureUv } from './emf-from-temperature-uv.ts';
import { emfRangeUv } from './emf-range-uv.ts';
import { temperatureFromEmfC } from './temperature-from-emf-c.ts';
import { temperatureRangeC } from './temperature-range-c.ts';

const OVER_RANGE: ReadingValue = Object.freeze({ kind: 'fault', fault: 'over-range' });
const COLD_JUNCTION: ReadingValue = Object.freeze({ kind: 'fault', fault: 'cold-junction' });

/**
 * `compensatedTemperatureC` for the flow of readings, where an impossible emf is expected (loose plug, spike):
 * a fault value instead of an error. emf in µV, cold junction in °C.
 */
export function readingFromEmf(type: ThermocoupleType, emfUv: number, coldJunctionC: number): ReadingValue {
  const coldRange = temperatureRangeC(type);
  if (!(coldJunctionC >= coldRange.lowest && coldJunctionC <= coldRange.highest)) return COLD_JUNCTION;
  const sumUv = emfUv + emfFromTemperatureUv(type, coldJunctionC);
  const range = emfRangeUv(type);
  if (!(sumUv >= range.lowest && sumUv <= range.highest)) return OVER_RANGE;
  return { kind: 'temperature', temperatureC: temperatureFromEmfC(type, sumUv) };
}
