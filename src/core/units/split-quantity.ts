import { readNumber } from './read-number.ts';
import { UnitError } from './UnitError.ts';

export interface QuantityKind<Unit extends string> {
  /** In words: "temperature", "pressure". */
  readonly what: string;
  /** Spellings in lower case, without blanks, and the unit each stands for. */
  readonly spellings: Readonly<Record<string, Unit>>;
  /** For remedies: "350F or 176.7C". */
  readonly examples: string;
}

/**
 * Splits `350 °F` into number and unit. A value without a unit, or with an unknown one, is refused by the
 * name of the option it was given for: no unit is ever guessed.
 */
export function splitQuantity<Unit extends string>(
  given: string,
  option: string,
  kind: QuantityKind<Unit>,
): { readonly value: number; readonly unit: Unit } {
  const [, digits = '', unitText = ''] = /^([+\-−\d.,]*)(.*)$/su.exec(given.trim()) ?? [];
  const value = readNumber(digits, { option, given });
  const spelling = unitText.replace(/\s+/gu, '').toLowerCase();
  const remedy = `Give the ${kind.what} with its unit, for example ${kind.examples}`;
  if (spelling === '') {
    throw new UnitError('unit-missing', `${option}: "${given}" has no unit`, { option, given, remedy });
  }
  const unit = Object.hasOwn(kind.spellings, spelling) ? kind.spellings[spelling] : undefined;
  if (unit === undefined) {
    throw new UnitError(
      'unit-unknown',
      `${option}: "${unitText.trim()}" is no unit of ${kind.what} known here`,
      {
        option,
        given,
        remedy,
      },
    );
  }
  return { value, unit };
}
