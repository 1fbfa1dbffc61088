import { differenceCToF } from '../units/difference-c-to-f.ts';
import { MM_PER_INCH } from '../units/exact-factors.ts';
import { pressurePsiToKpa } from '../units/pressure-psi-to-kpa.ts';
import { temperatureCToF } from '../units/temperature-c-to-f.ts';

/** The unit a person chose for temperatures. */
export type TemperatureUnit = 'F' | 'C';

const ABSENT = '—';

/** A number with fixed decimals, without "-0"; a dash for what is absent or no number. */
export function numberText(value: number | null, decimals: number): string {
  if (value === null || !Number.isFinite(value)) return ABSENT;
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** Temperature in a field of constant width (10): "  350.1 °F". For columns and large digits that must not jump. */
export function temperatureField(temperatureC: number | null, unit: TemperatureUnit, decimals = 1): string {
  const value = temperatureC === null || unit === 'C' ? temperatureC : temperatureCToF(temperatureC);
  return `${numberText(value, decimals).padStart(7)} °${unit}`;
}

/** Temperature in a sentence, the chosen unit first, the other at hand: "350 °F (176.7 °C)". */
export function temperatureText(temperatureC: number, unit: TemperatureUnit = 'F'): string {
  const fahrenheit = `${trimmed(temperatureCToF(temperatureC), 1)} °F`;
  const celsius = `${trimmed(temperatureC, 1)} °C`;
  return unit === 'F' ? `${fahrenheit} (${celsius})` : `${celsius} (${fahrenheit})`;
}

/** Temperature difference in a sentence: "4 °F (2.2 °C)". Never through + 32. */
export function differenceText(differenceC: number, unit: TemperatureUnit = 'F'): string {
  const fahrenheit = `${trimmed(differenceCToF(differenceC), 1)} °F`;
  const celsius = `${trimmed(differenceC, 1)} °C`;
  return unit === 'F' ? `${fahrenheit} (${celsius})` : `${celsius} (${fahrenheit})`;
}

/** Heating rate in a sentence: "2.5 °F/s (1.37 °C/s)". */
export function slopeText(slopeCPerS: number, unit: TemperatureUnit = 'F'): string {
  const fahrenheit = `${trimmed(differenceCToF(slopeCPerS), 2)} °F/s`;
  const celsius = `${trimmed(slopeCPerS, 2)} °C/s`;
  return unit === 'F' ? `${fahrenheit} (${celsius})` : `${celsius} (${fahrenheit})`;
}

/** Seconds in a field of constant width (9): "  53.47 s". */
export function secondsField(seconds: number | null, decimals = 2): string {
  return `${numberText(seconds, decimals).padStart(7)} s`;
}

/** Seconds in a sentence, trailing zeros dropped: "174 s", "53.5 s". */
export function secondsText(seconds: number, decimals = 1): string {
  return `${trimmed(seconds, decimals)} s`;
}

/** Pressure in a sentence: "206 psi (1421 kPa)". */
export function pressureText(pressurePsi: number, decimals = 0): string {
  return `${trimmed(pressurePsi, decimals)} psi (${trimmed(pressurePsiToKpa(pressurePsi), 0)} kPa)`;
}

/** Length in a sentence: "212 mm (8.346 in)". */
export function lengthText(lengthMm: number): string {
  return `${trimmed(lengthMm, 2)} mm (${trimmed(lengthMm / MM_PER_INCH, 3)} in)`;
}

/** Area in a sentence: "13132 mm² (20.35 in²)". */
export function areaText(areaMm2: number): string {
  return `${trimmed(areaMm2, 0)} mm² (${trimmed(areaMm2 / MM_PER_INCH ** 2, 2)} in²)`;
}

function trimmed(value: number, decimals: number): string {
  const text = numberText(value, decimals);
  return text.includes('.') ? text.replace(/\.?0+$/u, '') : text;
}
