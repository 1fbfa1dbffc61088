import type { CureFacts } from '../../core/cure/CureFacts.ts';
import { checkCureFacts } from '../../core/cure/check-cure-facts.ts';
import { parseTemperature } from '../../core/units/parse-temperature.ts';
import { OptionError } from './OptionError.ts';

/** Figures of the adhesive's data sheet; the three belong together. */
export interface CureOptions {
  readonly activationEnergy?: string;
  readonly cureReference?: string;
  readonly cureRange?: string;
}

/** `--activation-energy 80kJ/mol --cure-reference 177C --cure-range 120C/200C`; undefined where none of them is given. */
export function cureOptions({
  activationEnergy,
  cureReference,
  cureRange,
}: CureOptions): CureFacts | undefined {
  const given = [activationEnergy, cureReference, cureRange].filter((one) => one !== undefined);
  if (given.length === 0) return undefined;
  if (activationEnergy === undefined || cureReference === undefined || cureRange === undefined) {
    throw new OptionError(
      'cure: activation energy, reference temperature and range belong together',
      'Give --activation-energy 80kJ/mol --cure-reference 177C --cure-range 120C/200C from one data sheet',
    );
  }
  const ends = cureRange.split('/');
  return checkCureFacts({
    activationEnergyKjPerMol: energy(activationEnergy),
    referenceC: parseTemperature(cureReference, '--cure-reference'),
    rangeC: {
      from: parseTemperature(ends[0] ?? '', '--cure-range'),
      to: parseTemperature(ends[1] ?? '', '--cure-range'),
    },
  });
}

/** Thermochemical calorie, J (exact by definition). */
const J_PER_CAL = 4.184;

function energy(text: string): number {
  const found = /^(\d+(?:[.,]\d+)?)\s*(kj|j|kcal)\/mol$/iu.exec(text.trim());
  if (found === null) {
    throw new OptionError(
      `--activation-energy: expected a number with its unit, came "${text}"`,
      'Write --activation-energy 80kJ/mol, 80000J/mol or 19.1kcal/mol',
    );
  }
  const value = Number((found[1] as string).replace(',', '.'));
  const unit = (found[2] as string).toLowerCase();
  return unit === 'kj' ? value : unit === 'j' ? value / 1000 : value * J_PER_CAL;
}
