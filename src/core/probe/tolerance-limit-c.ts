import { type BaseMetalType, probeToleranceC } from '../uncertainty/probe-tolerance-c.ts';
import type { ThermocoupleType } from '../wire/WireEvent.ts';
import type { ProbeToleranceClass } from './Probe.ts';
import { ProbeError } from './ProbeError.ts';

interface Limit {
  readonly fixedC: number;
  readonly share: number;
  readonly fromC: number;
  readonly toC: number;
}

const BASE_METAL: readonly ThermocoupleType[] = ['K', 'J', 'T', 'E', 'N'];

/** IEC 60584-1 class 3: −200 to 40 °C. */
const CLASS_3: Readonly<Partial<Record<ThermocoupleType, Limit>>> = {
  K: { fixedC: 2.5, share: 0.015, fromC: -200, toC: 40 },
  N: { fixedC: 2.5, share: 0.015, fromC: -200, toC: 40 },
  E: { fixedC: 2.5, share: 0.015, fromC: -200, toC: 40 },
  T: { fixedC: 1, share: 0.015, fromC: -200, toC: 40 },
  B: { fixedC: 4, share: 0.005, fromC: 600, toC: 1700 },
};

/** Types R, S (ASTM E230, IEC 60584-1) and B, by class. Class 1 of R and S: 1 + 0.003·(t − 1100) above 1100 °C (from memory). */
const NOBLE: Readonly<Record<'RS' | 'B', Readonly<Partial<Record<ProbeToleranceClass, Limit>>>>> = {
  RS: {
    'astm-standard': { fixedC: 1.5, share: 0.0025, fromC: 0, toC: 1480 },
    'astm-special': { fixedC: 0.6, share: 0.001, fromC: 0, toC: 1480 },
    'iec-class-1': { fixedC: 1, share: 0, fromC: 0, toC: 1100 },
    'iec-class-2': { fixedC: 1.5, share: 0.0025, fromC: 0, toC: 1600 },
  },
  B: {
    'astm-standard': { fixedC: 0, share: 0.005, fromC: 870, toC: 1700 },
    'astm-special': { fixedC: 0, share: 0.0025, fromC: 870, toC: 1700 },
    'iec-class-2': { fixedC: 0, share: 0.0025, fromC: 600, toC: 1700 },
  },
};

/**
 * Tolerance ±, °C, of new wire of a type and class at a temperature: the greater of a fixed limit and a share of |t|.
 * Sources: ASTM E230/E230M and IEC 60584-1, initial calibration tolerances. Refuses a type without this class and a
 * temperature outside the range that the standard gives. Example: K, IEC class 2, 177 °C → 2.5.
 */
export function toleranceLimitC(
  type: ThermocoupleType,
  toleranceClass: ProbeToleranceClass,
  temperatureC: number,
): number {
  if (BASE_METAL.includes(type) && toleranceClass !== 'iec-class-3')
    return probeToleranceC(type as BaseMetalType, toleranceClass, temperatureC);
  const limit =
    toleranceClass === 'iec-class-3' ? CLASS_3[type] : NOBLE[type === 'B' ? 'B' : 'RS'][toleranceClass];
  if (limit === undefined || !(temperatureC >= limit.fromC && temperatureC <= limit.toC)) {
    throw new ProbeError(
      'no-tolerance-here',
      limit === undefined
        ? `the standard gives type ${type} no class ${toleranceClass}`
        : `${toleranceClass} gives type ${type} a tolerance from ${limit.fromC} to ${limit.toC} °C, came ${temperatureC} °C`,
      'Use the class marked on the probe, or calibrate it at this temperature',
    );
  }
  return Math.max(limit.fixedC, limit.share * Math.abs(temperatureC));
}
