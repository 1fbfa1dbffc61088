import type { PlainSeparator, PlainValues } from './PlainField.ts';
import type { DecimalSign } from './read-number.ts';
import type { TemperatureUnit } from './temperature-unit.ts';

/** What a column of a plain reader holds. A clock counts in `tickUs` microseconds. */
export type PlainColumn =
  | {
      readonly kind: 'temperature';
      readonly name: string | null;
      readonly unit: TemperatureUnit | null;
      readonly unitFrom: 'line' | 'heading' | 'option' | null;
      /** The unit stands after each of its values: a value without it is cut. */
      readonly printsUnit: boolean;
    }
  | { readonly kind: 'clock'; readonly tickUs: number }
  | { readonly kind: 'sequence' }
  /** Known to be no temperature, or not known at all: left alone. */
  | { readonly kind: 'other' };

/** How a plain reader's lines are laid out, learnt from the lines themselves. */
export interface PlainLayout {
  readonly separator: PlainSeparator;
  readonly decimal: DecimalSign;
  readonly labels: readonly (string | null)[];
  readonly columns: readonly PlainColumn[];
}

/** A line of values with its arrival, while the layout is being learnt. */
export interface LearntLine {
  readonly arrivedUs: number;
  readonly values: PlainValues;
}
