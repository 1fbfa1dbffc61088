import type { Probe, ProbeToleranceClass } from './Probe.ts';
import { ProbeError } from './ProbeError.ts';
import { probeErrorAt } from './probe-error-at.ts';
import { toleranceLimitC } from './tolerance-limit-c.ts';

export interface ProbeUncertainty {
  readonly standardUncertaintyC: number;
  /** True for a limit ±a with every value between equally likely: standard uncertainty a/√3. */
  readonly rectangular: boolean;
  /** ±a where rectangular; null from a calibration. */
  readonly limitC: number | null;
  readonly from: 'calibration' | 'extrapolated-calibration' | 'tolerance';
  /** Class that the limit comes from; null from a calibration. */
  readonly toleranceClass: ProbeToleranceClass | null;
  /** True where the class is not known and the widest of the type was taken. */
  readonly classAssumed: boolean;
  /** From the nearest calibration point, °C; null from a tolerance. */
  readonly distanceC: number | null;
}

/** Widest first: what a probe of unknown class is taken for. */
const WIDEST_FIRST: readonly ProbeToleranceClass[] = ['iec-class-2', 'astm-standard', 'iec-class-3'];

/**
 * How far a probe's readings, corrected by its calibration, may be off at a temperature, °C (standard uncertainty).
 * Calibrated: by its points, growing with the distance beyond them (see `probeErrorAt`). Without points: its tolerance
 * ±a, rectangular, a/√3 (JCGM 100, 4.3.7). Refuses a type and temperature that no standard gives a tolerance for.
 */
export function probeUncertaintyC(probe: Probe, atC: number): ProbeUncertainty {
  const calibrated = probeErrorAt(probe, atC);
  if (calibrated?.kind === 'bracketed') return fromCalibration(calibrated, 'calibration');
  const tolerance = toleranceOf(probe, atC);
  if (calibrated === null) {
    if (tolerance !== null) return tolerance;
    throw new ProbeError(
      'no-tolerance-here',
      `no standard gives type ${probe.thermocoupleType} a tolerance at ${atC} °C, and the probe has no calibration`,
      'Calibrate the probe at this temperature',
    );
  }
  return fromCalibration(calibrated, 'extrapolated-calibration');
}

function fromCalibration(
  { standardUncertaintyC, distanceC }: { readonly standardUncertaintyC: number; readonly distanceC: number },
  from: 'calibration' | 'extrapolated-calibration',
): ProbeUncertainty {
  return {
    standardUncertaintyC,
    rectangular: false,
    limitC: null,
    from,
    toleranceClass: null,
    classAssumed: false,
    distanceC,
  };
}

function toleranceOf(probe: Probe, atC: number): ProbeUncertainty | null {
  const { toleranceClass, thermocoupleType } = probe;
  if (toleranceClass !== null)
    return rectangular(toleranceLimitC(thermocoupleType, toleranceClass, atC), toleranceClass, false);
  for (const assumed of WIDEST_FIRST) {
    try {
      return rectangular(toleranceLimitC(thermocoupleType, assumed, atC), assumed, true);
    } catch {
      // The standard has no such class for this type here: the next one may have.
    }
  }
  return null;
}

function rectangular(
  limitC: number,
  toleranceClass: ProbeToleranceClass,
  classAssumed: boolean,
): ProbeUncertainty {
  return {
    standardUncertaintyC: limitC / Math.sqrt(3),
    rectangular: true,
    limitC,
    from: 'tolerance',
    toleranceClass,
    classAssumed,
    distanceC: null,
  };
}
