import type { TemperatureUnit } from '../text/units-text.ts';
import { temperatureCToF, temperatureFToC } from '../units/temperature-c-to-f.ts';

/** A temperature of °C in the unit that is shown. */
export function shownTemperature(temperatureC: number, unit: TemperatureUnit): number {
  return unit === 'F' ? temperatureCToF(temperatureC) : temperatureC;
}

/** A shown temperature back in °C. */
export function shownToC(shown: number, unit: TemperatureUnit): number {
  return unit === 'F' ? temperatureFToC(shown) : shown;
}
