import { LEFT_RIGHT, UP_DOWN } from '../text/keys-text.ts';

const PLAIN: readonly (readonly [RegExp, string])[] = [
  [/↑ ↓/gu, UP_DOWN],
  [/← →/gu, LEFT_RIGHT],
  [/: ↓/gu, ': Down'],
  [/: ↑/gu, ': Up'],
  [/°/gu, ''],
  [/±/gu, '+/-'],
  [/×/gu, 'x'],
  [/[—–]/gu, '-'],
  [/[·•]/gu, '.'],
  [/[’‘]/gu, "'"],
  [/[“”]/gu, '"'],
  [/…/gu, '...'],
  [/−/gu, '-'],
  [/→/gu, '->'],
  [/≤/gu, '<='],
  [/≥/gu, '>='],
  [/≈/gu, '~'],
  [/µ/gu, 'u'],
  [/√/gu, 'sqrt '],
  [/²/gu, '^2'],
  [/[^\n -~]/gu, '?'],
];

/** Words for a terminal that shows ASCII only: "350 F", "+/-". */
export function asciiText(text: string): string {
  return PLAIN.reduce((plain, [from, to]) => plain.replace(from, to), text);
}
