const PLAIN: readonly (readonly [RegExp, string])[] = [
  [/°/gu, ' deg '.trim()],
  [/±/gu, '+/-'],
  [/×/gu, 'x'],
  [/[—–]/gu, '-'],
  [/·/gu, '.'],
  [/↑ ↓/gu, 'Up Down'],
  [/[^\n -~]/gu, '?'],
];

/** Words for a terminal that shows ASCII only: "350 degF", "+/-". */
export function asciiText(text: string): string {
  return PLAIN.reduce((plain, [from, to]) => plain.replace(from, to), text);
}
