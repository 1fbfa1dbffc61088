import type { RecordingHead } from './RecordingEntry.ts';

/** Key under which a recording that goes on after an interruption says what a rise at its beginning is. */
export const RISE_UNDER_WAY_KEY = 'rise-under-way';

/** What the head states of a rise that is under way when the recording begins; undefined where it states nothing. */
export function headRiseUnderWay(head: Pick<RecordingHead, 'further'>): 'left-out' | undefined {
  return head.further[RISE_UNDER_WAY_KEY] === 'left-out' ? 'left-out' : undefined;
}
