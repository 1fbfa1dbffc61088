import type { RecordingHead } from './RecordingEntry.ts';

/** Key under which a recording's head keeps what a dip below target does to the hold. */
export const DIP_KEY = 'dip';

/** The dip rule that the head of a recording states; undefined where it states none. */
export function headDip(head: Pick<RecordingHead, 'further'>): 'restarts' | 'pauses' | undefined {
  const text = head.further[DIP_KEY];
  return text === 'restarts' || text === 'pauses' ? text : undefined;
}
