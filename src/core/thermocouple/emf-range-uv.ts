import type { ThermocoupleType } from '../wire/WireEvent.ts';
import { emfFromTemperatureUv } from './emf-from-temperature-uv.ts';
import { ITS90_TABLE } from './its90-table.ts';
import type { Range } from './temperature-range-c.ts';

const RANGES = new Map<ThermocoupleType, Range>();
for (const key of Object.keys(ITS90_TABLE)) {
  const type = key as ThermocoupleType;
  const { inverse } = ITS90_TABLE[type];
  const lowest = emfFromTemperatureUv(type, inverse[0]!.fromC);
  const highest = emfFromTemperatureUv(type, inverse.at(-1)!.toC);
  RANGES.set(type, Object.freeze({ lowest, highest }));
}

/**
 * Range in µV that can be turned back into a temperature: the reference function at the ends of the published
 * inverse functions (for type K −200 and 1372 °C). Type B starts at 250 °C: below, its emf is too flat and not monotonic.
 */
export function emfRangeUv(type: ThermocoupleType): Range {
  return RANGES.get(type) as Range;
}
