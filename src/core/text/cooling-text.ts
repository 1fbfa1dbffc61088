import type { CoolingWait } from '../cooling/CoolingWait.ts';
import { numberText, type TemperatureUnit, temperatureField, temperatureText } from './units-text.ts';

/** How long to wait in words, never shorter than reckoned: "50 s", "6 min". */
export function waitText(waitS: number): string {
  if (waitS < 90) return `${numberText(Math.max(10, Math.ceil(waitS / 10) * 10), 0)} s`;
  return `${numberText(Math.ceil(waitS / 60), 0)} min`;
}

/** The carrier between two runs: "warm (142 °F), wait about 6 min (5 min to 8 min)". */
export function coolingText(cooling: CoolingWait, unit: TemperatureUnit): string {
  const now = temperatureField(cooling.temperatureC, unit, 0).trim();
  if (cooling.kind === 'cool') return `Carrier cool: ${now}.`;
  const limit = temperatureText(cooling.limitC, unit);
  if (cooling.wait === null) {
    return cooling.why === 'not-cooling'
      ? `Carrier warm: ${now}, and not cooling. The next run must start below ${limit}.`
      : `Carrier warm: ${now}. The next run must start below ${limit}.`;
  }
  const { waitS, earliestS, latestS } = cooling.wait;
  const [early, late] = [waitText(earliestS), waitText(latestS)];
  const range = early === late ? '' : ` (${early} to ${late})`;
  return `Carrier warm: ${now}, wait about ${waitText(waitS)}${range} for ${limit}.`;
}
