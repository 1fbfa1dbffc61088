import { UnitError } from './UnitError.ts';

/** Gives the value back, or refuses it by the option's name when it is below 0. */
export function requireNotNegative(
  value: number,
  what: string,
  asked: { readonly option: string; readonly given: string },
): number {
  if (value >= 0) return value;
  throw new UnitError(
    'value-out-of-range',
    `${asked.option}: a ${what} cannot be below 0, came "${asked.given}"`,
    {
      ...asked,
      remedy: `Give the ${what} without a minus sign`,
    },
  );
}
