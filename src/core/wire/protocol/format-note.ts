import { sealLine } from './seal-line.ts';

/** Writes a line for people, kept in the recording and without effect. */
export function formatNote(text: string): string {
  return sealLine(`note ${text}`);
}
