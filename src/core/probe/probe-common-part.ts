import type { CommonPart } from '../uncertainty/SoakTimeBudget.ts';
import type { Probe } from './Probe.ts';
import { probeUncertaintyC } from './probe-uncertainty-c.ts';

/** Standard uncertainty of an ordinary calibration at the target, °C. Common practice, no source. */
const CALIBRATED_STANDARD_UNCERTAINTY_C = 0.35;

/**
 * What a probe leaves open in every run alike, for the budget of a soak time: its tolerance as a limit, or its
 * calibration as a standard uncertainty; and what a calibration at the target would make of it, where that is less.
 */
export function probeCommonPart(probe: Probe, targetC: number): CommonPart {
  const { limitC, standardUncertaintyC } = probeUncertaintyC(probe, targetC);
  const better = standardUncertaintyC > CALIBRATED_STANDARD_UNCERTAINTY_C;
  return {
    code: limitC === null ? 'calibration' : 'thermocouple-tolerance',
    stated: limitC === null ? { standardUncertaintyC } : { limitC },
    ...(limitC === null && probe.readerIncluded ? { includes: ['cold-junction'] } : {}),
    ...(better
      ? {
          remedy: {
            action: 'calibrate-probe',
            stated: { standardUncertaintyC: CALIBRATED_STANDARD_UNCERTAINTY_C },
          },
        }
      : {}),
  };
}
