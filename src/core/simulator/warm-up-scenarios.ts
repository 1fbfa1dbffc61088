import { PLATEN_SET_POINT_C } from './demo-presses.ts';
import type { WarmUpPlatenSetup } from './warm-up-platen.ts';

/** A warm-up of a simulated press: cold start, an hour, one cold part. Times in s from the first reading. */
export interface WarmUpScenario {
  readonly name: string;
  readonly seed: number;
  readonly madeAt: string;
  readonly pressName: string;
  readonly upper: WarmUpPlatenSetup;
  readonly lower: WarmUpPlatenSetup;
  readonly ambientC: number;
  readonly powerOnS: number;
  readonly partInS: number;
  readonly partOutS: number;
  readonly endS: number;
  readonly rateHz: number;
  /** Told by the press's contact; else by the operator's key. */
  readonly hasContact: boolean;
}

/** Steel platen 300 mm square; North's controllers are set slower and switch faster than South's. Invented. */
const NORTH_PLATEN: WarmUpPlatenSetup = {
  setPointC: PLATEN_SET_POINT_C,
  heatCapacityJPerK: 11_000,
  heaterW: 2_400,
  lossWPerK: 4.4,
  heaterLagS: 12,
  probeLagS: 2,
  cycleS: 30,
  gainPerC: 0.06,
  resetS: 260,
  offsetC: 0,
};

/** South's lower heater has lost a rod, and its plate runs colder than its controller believes. */
const SOUTH_PLATEN: WarmUpPlatenSetup = {
  ...NORTH_PLATEN,
  heaterW: 2_300,
  lossWPerK: 4.8,
  cycleS: 45,
  gainPerC: 0.08,
  resetS: 75,
};

const PRESSES = [
  {
    name: 'North',
    upper: { ...NORTH_PLATEN, offsetC: 0.4 },
    lower: { ...NORTH_PLATEN, offsetC: -0.6 },
    seed: 3100,
  },
  { name: 'South', upper: SOUTH_PLATEN, lower: { ...SOUTH_PLATEN, heaterW: 1_850, offsetC: -4 }, seed: 3200 },
] as const;

/** Mains voltage against its usual value, and room temperature, of each of the three days. */
const DAYS = [
  { power: 1, ambientC: 23.5, madeOn: '2026-03-16' },
  { power: 0.985, ambientC: 21.8, madeOn: '2026-03-17' },
  { power: 1.012, ambientC: 24.6, madeOn: '2026-03-18' },
] as const;

/** Three warm-ups of North and three of South. */
export const WARM_UP_SCENARIOS: readonly WarmUpScenario[] = Object.freeze(
  PRESSES.flatMap((press, which) =>
    DAYS.map((day, index) => ({
      name: `warm-up-${press.name.toLowerCase()}-${index + 1}`,
      seed: press.seed + index,
      madeAt: `${day.madeOn}T06:${which === 0 ? '10' : '40'}:00+01:00`,
      pressName: press.name,
      upper: { ...press.upper, heaterW: press.upper.heaterW * day.power },
      lower: { ...press.lower, heaterW: press.lower.heaterW * day.power },
      ambientC: day.ambientC,
      powerOnS: 30 + 4 * index,
      partInS: 3_060,
      partOutS: 3_240,
      endS: 3_630,
      rateHz: 1,
      hasContact: which === 0,
    })),
  ),
);
