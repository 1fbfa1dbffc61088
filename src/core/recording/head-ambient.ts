import type { RecordingHead } from './RecordingEntry.ts';

/** Key under which a recording's head keeps the room temperature, °C. */
export const AMBIENT_KEY = 'ambient-c';

/** Room temperature that the head of a recording states, °C; undefined where it states none. */
export function headAmbientC(head: Pick<RecordingHead, 'further'>): number | undefined {
  const text = head.further[AMBIENT_KEY];
  const value = text === undefined ? Number.NaN : Number(text);
  return Number.isFinite(value) ? value : undefined;
}
