import type { WhatIfCaution, WhatIfEstimate, WhatIfRefusal } from '../what-if/WhatIf.ts';
import {
  differenceText,
  numberText,
  secondsText,
  slopeText,
  type TemperatureUnit,
  temperatureText,
} from './units-text.ts';

/** An estimate for other conditions, with what it rests on. */
export function whatIfLines(
  { soakS, intervalS, parts, targetC, plateauC, startC, ...rest }: WhatIfEstimate,
  holdS: number,
  unit: TemperatureUnit,
): readonly string[] {
  const [fromS, toS] = intervalS;
  return [
    `ESTIMATE, not a proof: soak time about ${numberText(soakS, 1)} s, the next run between ${numberText(fromS, 1)} and ${numberText(toS, 1)} s (95 %).`,
    `  target ${temperatureText(targetC, unit)}, start ${temperatureText(startC, unit)}, curve levels out at ${temperatureText(plateauC, unit)}; ${slopeText(rest.slopeCPerS, unit)} at the target`,
    `  measured in ${rest.runs} ${rest.runs === 1 ? 'run' : 'runs'}: ${numberText(rest.asRunMeasuredS, 1)} s (their curves say ${numberText(rest.asRunFittedS, 1)} s); the change is ${rest.changeS < 0 ? '−' : '+'}${numberText(Math.abs(rest.changeS), 1)} s`,
    `  doubt, standard: run to run ${numberText(parts.runToRunS, 2)} s, fits ${numberText(parts.fitS, 2)} s, the curve itself ${numberText(parts.modelS, 2)} s, probe ${numberText(parts.probeS, 2)} s`,
    `  with the hold of ${secondsText(holdS)} that would be about ${numberText(soakS + holdS, 0)} s. Make runs at these conditions before anyone sets it: no recipe is made of an estimate.`,
    ...rest.cautions.map((caution) => `  caution: ${cautionText(caution, unit)}`),
  ];
}

export function whatIfRefusalText(refusal: WhatIfRefusal, unit: TemperatureUnit): string {
  switch (refusal.code) {
    case 'no-fit':
      return 'no counting run has a heating curve that fits';
    case 'platens-unknown':
      return 'other platens are asked for, but the runs tell neither measured platens nor set points';
    case 'target-not-reached':
      return `the bond line would level out at ${temperatureText(refusal.plateauC, unit)} and never reach ${temperatureText(refusal.targetC, unit)}`;
    case 'target-below-start':
      return `the start at ${temperatureText(refusal.startC, unit)} is not below the target of ${temperatureText(refusal.targetC, unit)}`;
    case 'target-too-close':
      return `the target is so close to the platens (${slopeText(refusal.slopeCPerS, unit)} at the target) that the probe alone leaves ${secondsText(refusal.probePartS)} open, more than a tenth of the hold (${secondsText(refusal.limitS)})`;
  }
}

function cautionText(caution: WhatIfCaution, unit: TemperatureUnit): string {
  switch (caution.code) {
    case 'above-seen':
      return `no run was hotter than ${temperatureText(caution.seenC, unit)}; beyond it the curve is a guess`;
    case 'wrong-model':
      return `the curve does not fit ${caution.runs} of the runs; their doubt is doubled`;
    case 'platens-not-measured':
      return 'the platens were not measured: the change is taken from the set point';
    case 'far':
      return `far from the runs: start ${differenceText(caution.startDifferenceC, unit)}, platens ${differenceText(caution.platenDifferenceC, unit)} away`;
    case 'one-run':
      return 'one run: the spread from run to run is unknown and not in the interval';
  }
}
