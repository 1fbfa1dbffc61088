import { KELVIN_AT_ZERO_C } from '../units/exact-factors.ts';
import { CureError } from './CureError.ts';
import type { CureFacts } from './CureFacts.ts';

/** Activation energies of thermosets lie well inside this, kJ/mol; a figure outside has another unit. Common practice, no source. */
const ENERGY_KJ_PER_MOL = { least: 10, most: 400 } as const;

/** Refuses an activation energy or temperatures that no data sheet holds; returns a frozen copy. */
export function checkCureFacts({ activationEnergyKjPerMol, referenceC, rangeC }: CureFacts): CureFacts {
  const { least, most } = ENERGY_KJ_PER_MOL;
  if (!(activationEnergyKjPerMol >= least && activationEnergyKjPerMol <= most))
    throw new CureError(
      `activation energy must lie between ${least} and ${most} kJ/mol, came ${activationEnergyKjPerMol} kJ/mol`,
      'Take it from the adhesive’s data sheet and mind its unit: 1 kcal/mol is 4.184 kJ/mol',
    );
  if (!(rangeC.from > -KELVIN_AT_ZERO_C && rangeC.from < rangeC.to && rangeC.to < 700))
    throw new CureError(
      `the data sheet's range must run from a lower to a higher temperature, came ${rangeC.from} to ${rangeC.to} °C`,
      'Write the range as 120C/200C',
    );
  if (!(referenceC >= rangeC.from && referenceC <= rangeC.to))
    throw new CureError(
      `the reference temperature must lie inside the data sheet's range, came ${referenceC} °C outside ${rangeC.from} to ${rangeC.to} °C`,
      'Take both from the same data sheet',
    );
  return Object.freeze({ activationEnergyKjPerMol, referenceC, rangeC: Object.freeze({ ...rangeC }) });
}
