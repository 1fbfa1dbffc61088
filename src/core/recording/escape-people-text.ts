import { escapeOne } from './escape-wire-text.ts';

/**
 * Controls, invisible formatting (also text direction), line and paragraph separators, halves of a pair,
 * unassigned characters, backslash, a first or last white space.
 */
const ESCAPED = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}\p{Cn}\\]|^\s|\s$/gu;

/** Text written by people (names, notes, reasons) as a recording keeps it: readable letters of any script stand as they are. */
export function escapePeopleText(text: string): string {
  return text.replace(ESCAPED, (character) => [...unitsOf(character)].map(escapeOne).join(''));
}

function* unitsOf(character: string): Generator<string> {
  for (let index = 0; index < character.length; index += 1) yield character.charAt(index);
}
