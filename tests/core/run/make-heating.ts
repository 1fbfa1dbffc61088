import type { ReadingValue, StreamEvent } from '../../../src/core/reading/StreamEvent.ts';
import type { RunRules } from '../../../src/core/run/RunResult.ts';

/** Seeded generator (mulberry32, public domain; from memory) with normal deviates by Box and Muller. */
export function createNoise(seed: number): { uniform(): number; normal(): number } {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    uniform,
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  };
}

export const RULES: RunRules = {
  targetC: 176.67,
  holdS: 120,
  longestDipS: 2,
  dip: 'restarts',
  platenSetPointC: null,
  ambientC: 24,
  warmCarrierLimitC: 5,
  closingDisagreementLimitS: 2,
  closedAtS: null,
};

/** The example of the trade: 24 °C, platens 232.2 °C, τ 40.5 s. */
export interface Heating {
  readonly startC: number;
  readonly platenC: number;
  readonly timeConstantS: number;
  readonly delayS: number;
}

export const EXAMPLE: Heating = { startC: 24, platenC: 232.2, timeConstantS: 40.5, delayS: 0 };

/** T = Tp − (Tp − T0)·exp(−(t − d)/τ) at t seconds after closing. */
export function heatingAt(heating: Heating, afterClosingS: number): number {
  const t = afterClosingS - heating.delayS;
  if (t <= 0) return heating.startC;
  return heating.platenC - (heating.platenC - heating.startC) * Math.exp(-t / heating.timeConstantS);
}

/** Soak time by algebra: d + τ·ln((Tp − T0)/(Tp − target)). */
export function trueSoak(heating: Heating, targetC: number): number {
  return (
    heating.delayS +
    heating.timeConstantS * Math.log((heating.platenC - heating.startC) / (heating.platenC - targetC))
  );
}

export interface StreamSetup {
  readonly heating?: Heating;
  readonly closedS?: number;
  readonly openedS?: number | null;
  readonly endS?: number;
  readonly rateHz?: number;
  readonly phase?: number;
  readonly noiseC?: number;
  readonly stepC?: number;
  readonly seed?: number;
  /** Alters the value of a reading; null makes it missing, 'lost' drops the reading. */
  readonly alter?: (timeS: number, valueC: number) => number | null | 'lost' | 'open-circuit';
  /** Further channels. */
  readonly others?: readonly ((timeS: number) => number)[];
}

/** Readings of one run, the bond line on channel 1. After opening it cools to 24 °C with 15 s. */
export function makeReadings(setup: StreamSetup): StreamEvent[] {
  const { heating = EXAMPLE, closedS = 20, openedS = null, endS = 220, rateHz = 10, phase = 0 } = setup;
  const { noiseC = 0.25, stepC = 0.25, seed = 1, alter = (_, value) => value, others = [] } = setup;
  const noise = createNoise(seed);
  const events: StreamEvent[] = [];
  const quantised = (value: number): number => (stepC > 0 ? Math.round(value / stepC) * stepC : value);
  const atOpening = openedS === null ? 0 : heatingAt(heating, openedS - closedS);
  for (let i = 0; (i + phase) / rateHz <= endS; i++) {
    const timeS = (i + phase) / rateHz;
    const truth =
      openedS !== null && timeS > openedS
        ? 24 + (atOpening - 24) * Math.exp(-(timeS - openedS) / 15)
        : heatingAt(heating, timeS - closedS);
    const altered = alter(timeS, truth + noiseC * noise.normal());
    if (altered === 'lost') continue;
    const values: ReadingValue[] = [
      altered === null
        ? { kind: 'missing' }
        : altered === 'open-circuit'
          ? { kind: 'fault', fault: 'open-circuit' }
          : { kind: 'temperature', temperatureC: quantised(altered) },
      ...others.map(
        (other): ReadingValue => ({
          kind: 'temperature',
          temperatureC: quantised(other(timeS) + noiseC * noise.normal()),
        }),
      ),
    ];
    events.push({ kind: 'reading', reading: { timeS, arrivedUs: Math.round(timeS * 1e6), values } });
  }
  return events;
}

/** Puts a mark or contact among readings, by time. */
export function withEvents(readings: readonly StreamEvent[], ...more: readonly StreamEvent[]): StreamEvent[] {
  const timeOf = (event: StreamEvent): number =>
    event.kind === 'reading'
      ? event.reading.timeS
      : event.kind === 'gap'
        ? event.toS
        : 'timeS' in event
          ? event.timeS
          : 0;
  return [...readings, ...more].sort((a, b) => timeOf(a) - timeOf(b));
}

export function closedKey(timeS: number): StreamEvent {
  return { kind: 'mark', timeS, mark: { kind: 'press-closed' } };
}

export function openedKey(timeS: number): StreamEvent {
  return { kind: 'mark', timeS, mark: { kind: 'opened' } };
}

export function contact(timeS: number, closed: boolean): StreamEvent {
  return { kind: 'contact', timeS, closed };
}
