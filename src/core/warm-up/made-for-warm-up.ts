import type { RecordingHead } from '../recording/RecordingEntry.ts';

/** Key under which a recording's head tells what it was made for, and the word for a warm-up. */
export const MADE_FOR_KEY = 'made-for';
export const MADE_FOR_WARM_UP = 'warm-up';

/** Whether a recording was made to watch platens warm up; null where its head does not tell what it was made for. */
export function madeForWarmUp({ further }: Pick<RecordingHead, 'further'>): boolean | null {
  const what = further[MADE_FOR_KEY];
  return what === undefined ? null : what === MADE_FOR_WARM_UP;
}
