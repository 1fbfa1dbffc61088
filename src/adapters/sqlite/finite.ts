import { storeRefusals } from '../../core/text/store-refusals.ts';
import { StoreError } from './StoreError.ts';

/** A number as a column takes it. SQLite would keep NaN as NULL without a word, so it is refused by the column's name. */
export function finite(column: string, value: number): number {
  if (typeof value === 'number' && Number.isFinite(value)) return value;
  throw new StoreError('store-not-finite', storeRefusals.notFinite(column, String(value)));
}

/** The same for a value that may be unknown. */
export function finiteOrNull(column: string, value: number | null): number | null {
  return value === null ? null : finite(column, value);
}
