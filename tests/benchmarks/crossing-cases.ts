import type { Heating } from '../core/run/make-heating.ts';
import type { TrueCurve } from './crossing-curves.ts';

export interface CrossingCase {
  readonly name: string;
  readonly heating?: Heating;
  /** Another curve than the first-order one; its crossing is the truth. Made anew for each run. */
  readonly shape?: (uniform: () => number) => TrueCurve;
  readonly targetC?: number;
  readonly rateHz: number;
  readonly noiseC: number;
  readonly stepC: number;
  /** AR(1) coefficient of the noise; its standard deviation stays `noiseC`. */
  readonly correlation?: number;
  readonly spikeShare?: number;
  readonly lostShare?: number;
  /** Length of a gap placed at random over the crossing, s. */
  readonly gapS?: number;
  readonly ripple?: { readonly amplitudeC: number; readonly frequencyHz: number };
  /** Readings after the crossing: 10 for the final figure, 1 for the provisional one. */
  readonly afterS?: number;
}

/** The cases of the table. */
export const CROSSING_CASES: readonly CrossingCase[] = [
  { name: '10 Hz, σ 0.25 °C', rateHz: 10, noiseC: 0.25, stepC: 0.25 },
  { name: '10 Hz, σ 1.0 °C', rateHz: 10, noiseC: 1, stepC: 0.25 },
  { name: '2 Hz, σ 0.25 °C', rateHz: 2, noiseC: 0.25, stepC: 0.25 },
  { name: '1 Hz, σ 0.25 °C', rateHz: 1, noiseC: 0.25, stepC: 0.25 },
  {
    name: '10 Hz, σ 0.25 °C, 1 % spikes ±30 °C, 2 % lost',
    rateHz: 10,
    noiseC: 0.25,
    stepC: 0.25,
    spikeShare: 0.01,
    lostShare: 0.02,
  },
  {
    name: '10 Hz, σ 1.0 °C, 1 % spikes ±30 °C, 2 % lost',
    rateHz: 10,
    noiseC: 1,
    stepC: 0.25,
    spikeShare: 0.01,
    lostShare: 0.02,
  },
  { name: '10 Hz, σ 0.25 °C, 3 s gap', rateHz: 10, noiseC: 0.25, stepC: 0.25, gapS: 3 },
  { name: '10 Hz, σ 0.5 °C, AR(1) 0.5', rateHz: 10, noiseC: 0.5, stepC: 0.25, correlation: 0.5 },
  { name: '10 Hz, σ 0.5 °C, AR(1) 0.8', rateHz: 10, noiseC: 0.5, stepC: 0.25, correlation: 0.8 },
  { name: '10 Hz, σ 0.02 °C (under q/4)', rateHz: 10, noiseC: 0.02, stepC: 0.25 },
  { name: '10 Hz, σ 0 °C', rateHz: 10, noiseC: 0, stepC: 0.25 },
  { name: '100 Hz, σ 0.05 °C', rateHz: 100, noiseC: 0.05, stepC: 0.25 },
  {
    name: '10 Hz, σ 0.25 °C, ripple 0.5 °C at 0.7 Hz',
    rateHz: 10,
    noiseC: 0.25,
    stepC: 0.25,
    ripple: { amplitudeC: 0.5, frequencyHz: 0.7 },
  },
  {
    name: '10 Hz, σ 0.25 °C, ripple 0.5 °C at 0.13 Hz',
    rateHz: 10,
    noiseC: 0.25,
    stepC: 0.25,
    ripple: { amplitudeC: 0.5, frequencyHz: 0.13 },
  },
  {
    name: '9.7 Hz, σ 0.25 °C, 60 Hz mains 0.5 °C (seen at 1.8 Hz)',
    rateHz: 9.7,
    noiseC: 0.25,
    stepC: 0.25,
    ripple: { amplitudeC: 0.5, frequencyHz: 60 },
  },
  {
    name: '4 Hz, σ 0.25 °C, 50.4 Hz 0.5 °C (seen at 1.6 Hz)',
    rateHz: 4,
    noiseC: 0.25,
    stepC: 0.25,
    ripple: { amplitudeC: 0.5, frequencyHz: 50.4 },
  },
  { name: 'provisional, 10 Hz, σ 0.25 °C', rateHz: 10, noiseC: 0.25, stepC: 0.25, afterS: 1 },
  { name: 'provisional, 10 Hz, σ 1.0 °C', rateHz: 10, noiseC: 1, stepC: 0.25, afterS: 1 },
  { name: 'every 5 s, σ 0.25 °C', rateHz: 0.2, noiseC: 0.25, stepC: 0.1 },
  { name: 'every 10 s, σ 0.25 °C', rateHz: 0.1, noiseC: 0.25, stepC: 0.1 },
  {
    name: '2 Hz, τ 5 s',
    heating: { startC: 24, platenC: 232.2, timeConstantS: 5, delayS: 1 },
    rateHz: 2,
    noiseC: 0.25,
    stepC: 0.1,
  },
];
