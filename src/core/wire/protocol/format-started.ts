import { sealLine } from './seal-line.ts';

/** Writes that the reader (re)started and its counters begin anew; `why` is one word, such as `power-up`. */
export function formatStarted(why = 'power-up'): string {
  return sealLine(`started ${why}`);
}
