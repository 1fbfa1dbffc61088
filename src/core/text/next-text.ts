import { numberText } from './units-text.ts';

/**
 * What a person does next, in block letters of at most eleven. It names keys and things to look at; it never
 * tells anyone to move the press.
 */
export const NEXT_WORD = {
  /** Several keys came at once and none was taken. */
  keyAgain: 'KEY AGAIN',
  seeReader: 'SEE READER',
  seeUnit: 'SEE UNIT',
  seeProbe: 'SEE PROBE',
  wait: 'WAIT',
  waitFor: (restS: number) =>
    restS < 100 ? `WAIT ${numberText(restS, 0)} S` : `WAIT ${numberText(Math.ceil(restS / 60), 0)} MIN`,
  cool: (wait: string) => `COOL ${wait.toUpperCase()}`,
  coolDown: 'COOL DOWN',
  check: 'K: CHECK',
  closed: 'C: CLOSED',
  opened: 'O: OPENED',
  runs: 'R: RUNS',
} as const;
