import type { RecordingHead } from './RecordingEntry.ts';

/** Key under which the head of an imported recording keeps when the press closed, s from the first reading. */
export const CLOSED_AT_KEY = 'closed-at-s';

/** Press closed as the head of a recording states it, s from the first reading; undefined where it states none. */
export function headClosedAtS(head: Pick<RecordingHead, 'further'>): number | undefined {
  const text = head.further[CLOSED_AT_KEY];
  const value = text === undefined || text === '' ? Number.NaN : Number(text);
  return Number.isFinite(value) ? value : undefined;
}
