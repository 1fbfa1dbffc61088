import { randomBytes, randomUUID } from 'node:crypto';

/** Id of a trial that a person can read and type: date, time and four letters that keep two laptops apart. */
export function newTrialId(now: Date): string {
  const stamp = now.toISOString().replace(/[-:]/g, '').replace('T', '-').slice(0, 13);
  return `${stamp}-${randomBytes(2).toString('hex')}`;
}

/** Id of a recording, unique in the world, so that stores can be brought together. */
export const newRecordingId = (): string => randomUUID();
