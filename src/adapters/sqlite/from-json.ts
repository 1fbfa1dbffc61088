import * as v from 'valibot';
import { storeRefusals } from '../../core/text/store-refusals.ts';
import { StoreError } from './StoreError.ts';

/** A stored JSON text checked by a schema; throws a StoreError that names what was read and the first thing wrong in it. */
export function fromJson<T>(schema: v.GenericSchema<unknown, T>, json: string, what: string): T {
  let value: unknown;
  try {
    value = JSON.parse(json);
  } catch (error) {
    throw new StoreError('store-unreadable', storeRefusals.unreadable(what, 'it is no JSON'), error);
  }
  const checked = v.safeParse(schema, value, { abortEarly: true });
  if (checked.success) return checked.output;
  const issue = checked.issues[0];
  const wrong = `${v.getDotPath(issue) ?? 'it'}: ${issue.message}`;
  throw new StoreError('store-unreadable', storeRefusals.unreadable(what, wrong));
}
