import type { ReadingValue } from '../reading/StreamEvent.ts';
import type { ChannelFault } from '../wire/WireEvent.ts';
import type { SniffedChannel } from './SniffReport.ts';

const KEPT = 1024;
const LEAST_PAIRS = 8;
/** Median absolute deviation to standard deviation of a normal distribution: 1 ÷ Φ⁻¹(3/4) (exact to the digits). */
const MAD_TO_SD = 1.482602218505602;
/** A difference farther from the middle is a spike or a step of the temperature. Common practice, no source. */
const OUTLIER_SPREADS = 4;
/** Values nearer than this are one value in two roundings (°F turned into °C). */
const SAME_C = 1e-6;

export interface ChannelStatistics {
  /** `neighbour`: no gap lies between this reading and the one before. */
  add(value: ReadingValue, neighbour: boolean): void;
  readonly report: Omit<SniffedChannel, 'number' | 'name' | 'thermocoupleType'>;
}

/**
 * One channel's readings in figures, over the latest 1024. Noise: standard deviation ÷ √2 (a difference holds two readings'
 * noise) of the differences between neighbours, without those farther than 4 spreads from their median (spread:
 * 1.4826 · median absolute deviation, at least one step). So a steady rise, a jump and a few spikes do not count, and the
 * coarse steps of a reader are averaged, where a median alone would be one step or none.
 */
export function createChannelStatistics(): ChannelStatistics {
  const valuesC = new Float64Array(KEPT);
  const differencesC = new Float64Array(KEPT);
  const faults: Partial<Record<ChannelFault, number>> = {};
  let temperatures = 0;
  let pairs = 0;
  let missing = 0;
  let latestC: number | null = null;
  let lowestC = Number.POSITIVE_INFINITY;
  let highestC = Number.NEGATIVE_INFINITY;
  let pairable = false;
  return {
    add(value, neighbour) {
      if (value.kind !== 'temperature') {
        if (value.kind === 'missing') missing += 1;
        else faults[value.fault] = (faults[value.fault] ?? 0) + 1;
        pairable = false;
        return;
      }
      const { temperatureC } = value;
      if (neighbour && pairable && latestC !== null) {
        differencesC[pairs % KEPT] = temperatureC - latestC;
        pairs += 1;
      }
      valuesC[temperatures % KEPT] = temperatureC;
      temperatures += 1;
      latestC = temperatureC;
      lowestC = Math.min(lowestC, temperatureC);
      highestC = Math.max(highestC, temperatureC);
      pairable = true;
    },
    get report() {
      const stepC = stepOf(valuesC.slice(0, Math.min(temperatures, KEPT)));
      return {
        temperatures,
        missing,
        faults: Object.freeze({ ...faults }),
        latestC,
        lowestC: temperatures === 0 ? null : lowestC,
        highestC: temperatures === 0 ? null : highestC,
        noiseC:
          pairs < LEAST_PAIRS ? null : noiseOf(differencesC.slice(0, Math.min(pairs, KEPT)), stepC ?? 0),
        stepC,
      };
    },
  };
}

function noiseOf(differencesC: Float64Array, stepC: number): number {
  const middleC = medianOf(differencesC);
  const spreadC = MAD_TO_SD * medianOf(differencesC.map((d) => Math.abs(d - middleC)));
  const farthestC = OUTLIER_SPREADS * Math.max(spreadC, stepC);
  const usual = differencesC.filter((d) => Math.abs(d - middleC) <= farthestC);
  let sumC = 0;
  for (const d of usual) sumC += d;
  let squares = 0;
  for (const d of usual) squares += (d - sumC / usual.length) ** 2;
  return Math.sqrt(squares / (usual.length - 1) / 2);
}

function stepOf(valuesC: Float64Array): number | null {
  const sorted = valuesC.sort();
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < sorted.length; i += 1) {
    const step = (sorted[i] as number) - (sorted[i - 1] as number);
    if (step > SAME_C && step < least) least = step;
  }
  return Number.isFinite(least) ? least : null;
}

function medianOf(values: Float64Array): number {
  const sorted = values.slice().sort();
  const middle = sorted.length >> 1;
  const upper = sorted[middle] as number;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] as number)) / 2;
}
