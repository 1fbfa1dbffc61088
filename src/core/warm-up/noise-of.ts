import type { Samples } from '../run/collect-samples.ts';

/**
 * Standard deviation of the noise from reading to reading, °C: second differences of evenly spaced neighbours hold
 * neither level nor slope, and their variance is six times the noise's. 0 with fewer than three readings.
 */
export function noiseOf({ timesS, valuesC }: Samples): number {
  let sum = 0;
  let used = 0;
  for (let i = 1; i + 1 < valuesC.length; i++) {
    const before = timesS[i]! - timesS[i - 1]!;
    const after = timesS[i + 1]! - timesS[i]!;
    if (Math.abs(after - before) > 0.2 * before) continue;
    sum += (valuesC[i + 1]! - 2 * valuesC[i]! + valuesC[i - 1]!) ** 2;
    used += 1;
  }
  return used === 0 ? 0 : Math.sqrt(sum / used / 6);
}
