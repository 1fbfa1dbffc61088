import type { ChannelFault } from '../WireEvent.ts';
import type { TemperatureUnit } from './temperature-unit.ts';

/** What stands in one place of a plain line. */
export type PlainContent =
  | {
      readonly kind: 'number';
      readonly value: number;
      readonly decimals: number;
      readonly integerDigits: number;
    }
  | { readonly kind: 'fault'; readonly fault: ChannelFault }
  /** A clock stamp or date: no temperature, no number. */
  | { readonly kind: 'stamp' }
  | { readonly kind: 'empty' };

export interface PlainField {
  /** What stands before the value (`T1`), without its colon; null where nothing does. */
  readonly label: string | null;
  readonly content: PlainContent;
  /** Temperature unit printed after the value. */
  readonly unit: TemperatureUnit | null;
  /** Another unit printed after the value (`%`, `ms`, `V`), lower case; null where none. */
  readonly otherUnit: string | null;
}

export type PlainSeparator = 'tab' | 'semicolon' | 'bar' | 'comma' | 'space' | 'single' | 'json';

/** A plain line that holds values, taken apart. */
export interface PlainValues {
  readonly separator: PlainSeparator;
  readonly decimal: '.' | ',';
  readonly fields: readonly PlainField[];
}
