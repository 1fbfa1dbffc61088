import { StatisticsError } from '../statistics/StatisticsError.ts';

export type ToleranceClass = 'astm-standard' | 'astm-special' | 'iec-class-1' | 'iec-class-2';
export type BaseMetalType = 'K' | 'J' | 'T' | 'E' | 'N';

interface Limit {
  readonly leastC: number;
  /** Share of the temperature in °C. */
  readonly share: number;
  readonly fromC: number;
  readonly toC: number;
}

const limit = (leastC: number, share: number, fromC: number, toC: number): Limit => ({
  leastC,
  share,
  fromC,
  toC,
});

/** Sources: ASTM E230/E230M (from 0 °C up) and IEC 60584-1, initial calibration tolerances of new wire. */
const LIMITS: Readonly<Record<BaseMetalType, Readonly<Record<ToleranceClass, Limit>>>> = {
  K: byClass(limit(2.2, 0.0075, 0, 1260), 1.1, limit(1.5, 0.004, -40, 1000), limit(2.5, 0.0075, -40, 1200)),
  J: byClass(limit(2.2, 0.0075, 0, 760), 1.1, limit(1.5, 0.004, -40, 750), limit(2.5, 0.0075, -40, 750)),
  T: byClass(limit(1, 0.0075, 0, 370), 0.5, limit(0.5, 0.004, -40, 350), limit(1, 0.0075, -40, 350)),
  E: byClass(limit(1.7, 0.005, 0, 870), 1, limit(1.5, 0.004, -40, 800), limit(2.5, 0.0075, -40, 900)),
  N: byClass(limit(2.2, 0.0075, 0, 1260), 1.1, limit(1.5, 0.004, -40, 1000), limit(2.5, 0.0075, -40, 1200)),
};

function byClass(
  standard: Limit,
  specialC: number,
  class1: Limit,
  class2: Limit,
): Record<ToleranceClass, Limit> {
  return {
    'astm-standard': standard,
    'astm-special': { ...standard, leastC: specialC, share: 0.004 },
    'iec-class-1': class1,
    'iec-class-2': class2,
  };
}

/**
 * Tolerance ±, °C, of a new thermocouple at a temperature: the greater of a fixed limit and a share of the
 * temperature. Refuses a temperature outside the range the standard gives for the type and class.
 * Example: K, ASTM standard, 176.67 °C → 2.2; the same at 400 °C → 3.0.
 */
export function probeToleranceC(
  type: BaseMetalType,
  toleranceClass: ToleranceClass,
  temperatureC: number,
): number {
  const { leastC, share, fromC, toC } = LIMITS[type][toleranceClass];
  if (!(temperatureC >= fromC && temperatureC <= toC)) {
    throw new StatisticsError(
      'option-out-of-range',
      `${toleranceClass} gives type ${type} a tolerance from ${fromC} to ${toC} °C, came ${temperatureC} °C`,
      'Use a calibration of the probe at this temperature',
    );
  }
  return Math.max(leastC, share * Math.abs(temperatureC));
}
