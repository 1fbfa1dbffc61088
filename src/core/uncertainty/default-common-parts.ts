import { probeToleranceC } from './probe-tolerance-c.ts';
import type { CommonPart } from './SoakTimeBudget.ts';

/** Standard uncertainty of a probe after an ordinary calibration, °C. Common practice, no source. */
const CALIBRATED_STANDARD_UNCERTAINTY_C = 0.35;

/**
 * What is common to all runs when nothing is known of the probe: a new type K probe somewhere inside its
 * standard tolerance at the target (ASTM E230), and what a calibration would make of it. Cold junction, place of
 * the tip and lag of the probe are not in it unless stated.
 */
export function defaultCommonParts(targetC: number): readonly CommonPart[] {
  return [
    {
      code: 'thermocouple-tolerance',
      stated: { limitC: probeToleranceC('K', 'astm-standard', targetC) },
      remedy: {
        action: 'calibrate-probe',
        stated: { standardUncertaintyC: CALIBRATED_STANDARD_UNCERTAINTY_C },
      },
    },
  ];
}
